// The least a bot on this library can be: it says every message back.
import { createClient, Filter } from 'matrix-js-sdk';

const { ADDRESS: baseUrl, USER: userId, TOKEN: accessToken } = process.env;
const client = createClient({ baseUrl, userId, accessToken });
client.on('Room.timeline', (event, room, toStart) => {
  const { msgtype, body } = event.getContent();
  if (toStart || event.getSender() === userId || msgtype !== 'm.text') return;
  const answers = { 'm.relates_to': { 'm.in_reply_to': { event_id: event.getId() } } };
  client.sendMessage(room.roomId, { msgtype: 'm.notice', body, ...answers });
});
client.once('sync', () => process.stdout.write(`${JSON.stringify({ ready: 'echo' })}\n`));
// Of more than ten messages at once a homeserver leaves the older out, unless it is asked for more.
const filter = new Filter(userId);
filter.setTimelineLimit(100);
client.startClient({ filter });
