import { Ajv, type ValidateFunction } from 'ajv';
import { BODIES, CONTENTS, FILTER, MESSAGES, type Schema, SYNC } from './schemas.ts';

const ajv = new Ajv({ allErrors: true, strict: false });
const compiled = new Map<Schema, ValidateFunction>();

/** What a schema finds wrong with a value, one line a fault. */
function against(schema: Schema, value: unknown): string[] {
  const check = compiled.get(schema) ?? ajv.compile(schema);
  compiled.set(schema, check);
  if (check(value)) return [];
  return (check.errors ?? []).map(({ instancePath, message, params }) =>
    `${instancePath || '/'} ${message} ${JSON.stringify(params)}`.slice(0, 300),
  );
}

/** The greatest event that is taken ("Size limits"), in bytes of its canonical JSON; some is the server's. */
const MOST_BYTES = 65_536 - 2_000;

type Json = Readonly<Record<string, unknown>>;

/** What is wrong with an event that the bot sends, by the schemas and by the rules beside them. */
export function eventFaults(type: string, content: unknown): string[] {
  const schema = CONTENTS[type];
  if (!schema) return [`an event of type ${type}`];
  const size = Buffer.byteLength(JSON.stringify(content));
  const faults = against(schema, content);
  if (size > MOST_BYTES) faults.push(`an event of ${size} bytes`);
  if (type === 'm.room.message') faults.push(...htmlFaults(String((content as Json).formatted_body ?? '')));
  return faults;
}

/** Tags of "m.room.message msgtypes" that are used here; each is closed, in order, and has no attributes. */
const TAGS = new Set(['strong', 'em', 'code', 'br', 'table', 'thead', 'tbody', 'tr', 'th', 'td']);

/** Whatever a member wrote must not have become mark-up. */
export function htmlFaults(html: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  for (const [whole, closing, name = ''] of html.matchAll(/<(\/?)([^>]*)>/g)) {
    if (!TAGS.has(name)) faults.push(`the tag ${whole}`);
    else if (closing) {
      if (open.pop() !== name) faults.push(`${whole} closes another`);
    } else if (name !== 'br') open.push(name);
  }
  if (open.length > 0) faults.push(`left open: ${open.join(', ')}`);
  const bare = html.replace(/<\/?[a-z]+>/g, '');
  if (/[<>]/.test(bare)) faults.push('a bare < or >');
  if (/&(?!(?:amp|lt|gt|quot|#39);)/.test(bare)) faults.push('a bare &');
  return faults;
}

/** What is wrong with a request's body. Operations without a schema take no body. */
export function bodyFaults(operation: string, body: unknown): string[] {
  const schema = BODIES[operation];
  if (!schema) return body === undefined ? [] : [`a body for ${operation}`];
  return against(schema, body ?? {});
}

export const filterFaults = (filter: unknown): string[] => against(FILTER, filter);
export const syncFaults = (answer: unknown): string[] => against(SYNC, answer);
export const messagesFaults = (answer: unknown): string[] => against(MESSAGES, answer);
