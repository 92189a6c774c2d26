// The least a bot on this library can be that answers with a picture: a ready one, from a file.
import { readFileSync } from 'node:fs';
import { Client, GatewayIntentBits } from 'discord.js';

const client = new Client({
  intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages],
  rest: { api: process.env.API },
});
const files = [{ attachment: readFileSync(process.env.PICTURE), name: 'pong.png' }];
const embeds = [{ title: 'pong', image: { url: 'attachment://pong.png' } }];
client.on('interactionCreate', (event) => event.reply({ embeds, files, allowedMentions: { parse: [] } }));
client.once('clientReady', () => console.log(JSON.stringify({ ready: 'picture' })));
client.login(process.env.TOKEN);
