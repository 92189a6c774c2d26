/*
 * What the Matrix specification says a client sends, as JSON schemas: client-server API v1.16, the sections named
 * below. Written for what this bot sends, and closed where the specification is open, so that a slip in a name is
 * a fault and not an extension. When they were written, every request, answer and event of the tests was also held
 * to the specification's own data files (data/api/client-server, data/event-schemas), which found no fault.
 */

export type Schema = Readonly<Record<string, unknown>>;

const text = { type: 'string' };
const words = { type: 'string', minLength: 1 };
const whole = { type: 'integer' };
const user = { type: 'string', pattern: '^@[^:]*:.+$', maxLength: 255 };
const event = { type: 'string', pattern: '^\\$' };
const media = { type: 'string', pattern: '^mxc://[^/]+/[^/]+$' };
const list = (items: Schema): Schema => ({ type: 'array', items });
const either = (...anyOf: readonly Schema[]): Schema => ({ anyOf });

/** An object with these parts and no other; a name that ends in "?" may be missing. */
function only(parts: Readonly<Record<string, unknown>>): Schema {
  const entries = Object.entries(parts).map(([name, part]) => [name.replace(/\?$/, ''), part]);
  const required = Object.keys(parts).filter((name) => !name.endsWith('?'));
  return { type: 'object', properties: Object.fromEntries(entries), required, additionalProperties: false };
}

const map = (values: Schema): Schema => ({ type: 'object', additionalProperties: values });
const any = { type: 'object' };

/** "Definition: user and room mentions". */
const mentions = only({ 'user_ids?': list(user) });

/** "Rich replies", "Threading", "Event replacements". */
const answers = only({ event_id: event });
const relations = either(
  only({ 'm.in_reply_to': answers }),
  only({
    rel_type: { const: 'm.thread' },
    event_id: event,
    'is_falling_back?': { type: 'boolean' },
    'm.in_reply_to': answers,
  }),
);

const noticeWords = {
  msgtype: { const: 'm.notice' },
  body: words,
  format: { const: 'org.matrix.custom.html' },
  formatted_body: words,
  'm.mentions': mentions,
};

/** "m.notice", "Event replacements": the new words stand apart, beside what older clients show. */
const notice = only({ ...noticeWords, 'm.relates_to?': relations });
const edited = only({
  ...noticeWords,
  'm.new_content': only(noticeWords),
  'm.relates_to': only({ rel_type: { const: 'm.replace' }, event_id: event }),
});

/** "Sending encrypted attachments", EncryptedFile. */
const lockedFile = only({
  url: media,
  v: { const: 'v2' },
  key: only({
    kty: { const: 'oct' },
    key_ops: { type: 'array', items: text, contains: { const: 'encrypt' } },
    alg: { const: 'A256CTR' },
    k: { type: 'string', pattern: '^[A-Za-z0-9_-]{43}$' },
    ext: { const: true },
  }),
  iv: { type: 'string', pattern: '^[A-Za-z0-9+/]{22}$' },
  hashes: only({ sha256: { type: 'string', pattern: '^[A-Za-z0-9+/]{43}$' } }),
});

const where = [{ url: media }, { file: lockedFile }];
const named = { body: words, filename: words, 'm.mentions': mentions, 'm.relates_to?': relations };
const info = { mimetype: words, size: { type: 'integer', minimum: 1 } };
const extent = { type: 'integer', minimum: 1 };
/** "m.image" and "m.file": the file's name apart makes the body a caption. */
const images = where.map((at) =>
  only({ msgtype: { const: 'm.image' }, ...named, info: only({ ...info, w: extent, h: extent }), ...at }),
);
const files = where.map((at) => only({ msgtype: { const: 'm.file' }, ...named, info: only(info), ...at }));

/** Contents by the type of the event that carries them. */
export const CONTENTS: Readonly<Record<string, Schema>> = {
  'm.room.message': either(notice, edited, ...images, ...files),
  'm.reaction': only({
    'm.relates_to': only({ rel_type: { const: 'm.annotation' }, event_id: event, key: words }),
  }),
  'm.room.encrypted': only({
    algorithm: { const: 'm.megolm.v1.aes-sha2' },
    ciphertext: words,
    'sender_key?': words,
    'device_id?': words,
    session_id: words,
    'm.relates_to?': any,
  }),
  'm.room.pinned_events': only({ pinned: list(event) }),
  'm.room.redaction': only({ 'reason?': text }),
};

const signedKey = only({ key: words, 'fallback?': { type: 'boolean' }, signatures: map(map(text)) });
const eventFilter = {
  ...{ 'limit?': whole, 'types?': list(text), 'not_types?': list(text) },
  ...{ 'senders?': list(user), 'not_senders?': list(user) },
};
const roomFilter = only({
  ...eventFilter,
  ...{ 'lazy_load_members?': { type: 'boolean' }, 'unread_thread_notifications?': { type: 'boolean' } },
});
export const FILTER: Schema = only({
  'presence?': only(eventFilter),
  'account_data?': only(eventFilter),
  'room?': only({ 'ephemeral?': roomFilter, 'timeline?': roomFilter, 'state?': roomFilter }),
});

/** Bodies by the operation's name in the specification. */
export const BODIES: Readonly<Record<string, Schema>> = {
  login: only({
    type: { const: 'm.login.password' },
    identifier: only({ type: { const: 'm.id.user' }, user: words }),
    password: words,
    'device_id?': words,
    'initial_device_display_name?': words,
  }),
  logout: only({}),
  createRoom: only({
    is_direct: { const: true },
    invite: list(user),
    preset: { enum: ['private_chat', 'public_chat', 'trusted_private_chat'] },
    'initial_state?': list(only({ type: words, 'state_key?': text, content: any })),
  }),
  joinRoom: only({ 'reason?': text, 'third_party_signed?': any }),
  leaveRoom: only({ 'reason?': text }),
  defineFilter: FILTER,
  uploadKeys: only({
    'device_keys?': only({
      user_id: user,
      device_id: words,
      algorithms: list(text),
      keys: map(text),
      signatures: map(map(text)),
    }),
    'one_time_keys?': map(signedKey),
    'fallback_keys?': map(signedKey),
  }),
  queryKeys: only({ device_keys: map(list(text)), 'timeout?': whole }),
  claimKeys: only({ one_time_keys: map(map(text)), 'timeout?': whole }),
  sendToDevice: only({ messages: map(map(any)) }),
  setAccountData: any,
  uploadCrossSigningKeys: any,
  uploadCrossSigningSignatures: map(map(any)),
};

/** What every event of a room's timeline is: "Room event format". */
export const ROOM_EVENT: Schema = {
  type: 'object',
  properties: {
    event_id: event,
    type: words,
    sender: user,
    origin_server_ts: { type: 'integer', minimum: 0 },
    content: any,
    state_key: text,
    redacts: event,
    unsigned: any,
    room_id: { type: 'string', pattern: '^!' },
  },
  required: ['event_id', 'type', 'sender', 'origin_server_ts', 'content'],
  additionalProperties: false,
};

const events = (of: Schema) => only({ events: list(of) });
/** "GET /sync": what the stand-in itself answers, so that it is held to the same book. */
export const SYNC: Schema = only({
  next_batch: words,
  account_data: events(only({ type: words, content: any })),
  to_device: events(any),
  device_lists: only({ changed: list(user), left: list(user) }),
  device_one_time_keys_count: map(whole),
  device_unused_fallback_key_types: list(text),
  rooms: only({
    invite: map(only({ invite_state: events(any) })),
    leave: map(only({ state: events(ROOM_EVENT), timeline: any })),
    join: map(
      only({
        summary: only({
          'm.heroes': list(user),
          'm.joined_member_count': whole,
          'm.invited_member_count': whole,
        }),
        state: events(ROOM_EVENT),
        timeline: only({ events: list(ROOM_EVENT), limited: { type: 'boolean' }, prev_batch: words }),
        ephemeral: events(any),
        account_data: events(any),
        unread_notifications: map(whole),
      }),
    ),
  }),
});

/** "GET /rooms/{roomId}/messages". */
export const MESSAGES: Schema = only({
  start: words,
  'end?': words,
  chunk: list(ROOM_EVENT),
  state: list(any),
});
