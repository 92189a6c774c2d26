/** What an event of a room says, as far as it concerns us. */
export interface Said {
  readonly id: string;
  readonly room: string;
  readonly sender: string;
  readonly at: number;
  readonly type: string;
  readonly content: Readonly<Record<string, unknown>>;
  /** The event that this one takes away. */
  readonly redacts?: string | undefined;
}

/** Who the bot is in a room. */
export interface Self {
  readonly user: string;
  readonly name: string;
  readonly prefix: string;
  /** Only the asker and the bot are there. */
  readonly alone: boolean;
}

export interface Words {
  /** A command begins with "/", anything else is a plain question. */
  readonly words: string;
  /** The message that is asked in: the edited one where this is an edit. */
  readonly asked: string;
  readonly edit: boolean;
  /** The thread's first message, where it was asked in one. */
  readonly thread: string | undefined;
  /** Said to us by name or in answer to us: a bot may do that too. */
  readonly byName: boolean;
}

type Json = Readonly<Record<string, unknown>>;
const object = (value: unknown): Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Json) : {};
const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

/** The ask in a message; null where it is not for us. Notices are what bots say: they are never answered. */
export function askedIn({ id, type, content }: Said, self: Self): Words | null {
  if (type !== 'm.room.message') return null;
  const relation = object(content['m.relates_to']);
  const edit = relation.rel_type === 'm.replace';
  const edited = text(relation.event_id);
  if (edit && !edited) return null;
  const now = edit ? object(content['m.new_content']) : content;
  if (now.msgtype !== 'm.text') return null;
  const body = withoutQuote(text(now.body) ?? '', relation);
  const found = wordsFor(body, now, self);
  if (found === null) return null;
  const thread = relation.rel_type === 'm.thread' ? text(relation.event_id) : undefined;
  return { ...found, asked: edit ? (edited ?? id) : id, edit, thread };
}

function wordsFor(body: string, content: Json, self: Self): Pick<Words, 'words' | 'byName'> | null {
  const command = commandIn(body, self.prefix);
  if (command !== null) return { words: command, byName: false };
  const named = withoutName(body, content, self);
  if (named === null) return self.alone && body.trim() !== '' ? { words: body.trim(), byName: true } : null;
  if (named === '') return { words: '/help', byName: true };
  return { words: commandIn(named, self.prefix) ?? named, byName: true };
}

/** The prefix and, at once after it, a word. */
function commandIn(body: string, prefix: string): string | null {
  const trimmed = body.trimStart();
  if (!trimmed.startsWith(prefix)) return null;
  const rest = trimmed.slice(prefix.length);
  return /^[a-z]/i.test(rest) ? `/${rest.trimEnd()}` : null;
}

/** What was said to us, without our name; null where we were not meant. */
function withoutName(body: string, content: Json, { user, name }: Self): string | null {
  const mentions = content['m.mentions'];
  const meant = object(mentions).user_ids;
  const isMeant = Array.isArray(meant) && meant.includes(user);
  // Clients that state whom they mean are believed; others mean whom they name.
  if (mentions !== undefined && !isMeant) return null;
  const names = [user, `@${name}`, name].filter((one) => one.length > 1).map(quoted);
  const atStart = new RegExp(`^\\s*(?:${names.join('|')})(?![\\p{L}\\p{N}])[\\s:,]*`, 'iu');
  if (!isMeant && !atStart.test(body) && !body.includes(user)) return null;
  return body.replace(atStart, '').replaceAll(user, ' ').replace(/\s+/g, ' ').trim();
}

const quoted = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** Older clients put what they answer before their words, each line marked. */
function withoutQuote(body: string, relation: Json): string {
  if (relation['m.in_reply_to'] === undefined || !body.startsWith('> ')) return body;
  const lines = body.split('\n');
  const from = lines.findIndex((line) => !line.startsWith('>'));
  return from < 0 ? '' : lines.slice(from).join('\n').trimStart();
}

/** The number that a reaction stands for, from 0; null where it is none. */
export function pressedIn(
  { type, content }: Said,
  signs: readonly string[],
): { on: string; at: number } | null {
  if (type !== 'm.reaction') return null;
  const relation = object(content['m.relates_to']);
  const on = text(relation.event_id);
  const key = text(relation.key);
  if (relation.rel_type !== 'm.annotation' || on === undefined || key === undefined) return null;
  // Some clients leave out the sign that asks for the coloured form.
  const bare = (sign: string) => sign.replaceAll('\uFE0F', '');
  const at = signs.findIndex((sign) => bare(sign) === bare(key));
  return at < 0 ? null : { on, at };
}
