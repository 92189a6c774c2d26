// The least a bot on this library can be: it answers every command with one word.
import { Client, GatewayIntentBits } from 'discord.js';

const client = new Client({
  intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages],
  rest: { api: process.env.API },
});
client.on('interactionCreate', (event) => event.reply({ content: 'pong', allowedMentions: { parse: [] } }));
client.once('clientReady', () => console.log(JSON.stringify({ ready: 'pong' })));
client.login(process.env.TOKEN);
