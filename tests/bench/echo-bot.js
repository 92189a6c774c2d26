// The least a bot on this library can be: it says every message back.
import { createClient } from 'matrix-js-sdk';

const { ADDRESS: baseUrl, USER: userId, TOKEN: accessToken } = process.env;
const client = createClient({ baseUrl, userId, accessToken });
client.on('Room.timeline', (event, room, toStart) => {
  const { msgtype, body } = event.getContent();
  if (toStart || event.getSender() === userId || msgtype !== 'm.text') return;
  const answers = { 'm.relates_to': { 'm.in_reply_to': { event_id: event.getId() } } };
  client.sendMessage(room.roomId, { msgtype: 'm.notice', body, ...answers });
});
client.once('sync', () => process.stdout.write(`${JSON.stringify({ ready: 'echo' })}\n`));
client.startClient({ initialSyncLimit: 1 });
