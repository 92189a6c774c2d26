import type { IncomingMessage } from 'node:http';

/** A file as it came in a request. */
export interface SentFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The body of a request and its files: JSON, or multipart with payload_json and files[n]. */
export async function bodyOf(incoming: IncomingMessage): Promise<{ body: unknown; files: SentFile[] }> {
  const chunks: Buffer[] = [];
  for await (const chunk of incoming) chunks.push(chunk as Buffer);
  const whole = Buffer.concat(chunks);
  if (whole.length === 0) return { body: undefined, files: [] };
  const type = incoming.headers['content-type'] ?? '';
  if (type.startsWith('application/json')) return { body: JSON.parse(whole.toString('utf8')), files: [] };
  const files: SentFile[] = [];
  let body: unknown;
  for (const { name, filename, bytes } of partsOf(whole, type)) {
    const at = /^files\[(\d+)\]$/.exec(name)?.[1];
    if (at !== undefined && filename !== undefined) files[Number(at)] = { name: filename, bytes };
    else if (name === 'payload_json') body = JSON.parse(Buffer.from(bytes).toString('utf8'));
    else throw new Error(`a part called ${name}`);
  }
  return { body, files };
}

interface Part {
  readonly name: string;
  readonly filename: string | undefined;
  readonly bytes: Uint8Array;
}

/** The parts of a multipart body (RFC 7578). */
function partsOf(whole: Buffer, type: string): Part[] {
  const boundary = /boundary="?([^";]+)"?/.exec(type)?.[1];
  if (!type.startsWith('multipart/form-data') || !boundary) throw new Error(`a body of type ${type}`);
  const mark = Buffer.from(`--${boundary}`);
  const parts: Part[] = [];
  for (let from = whole.indexOf(mark) + mark.length; ; ) {
    const next = whole.indexOf(mark, from);
    if (next < 0) return parts;
    parts.push(partOf(whole.subarray(from + 2, next - 2)));
    from = next + mark.length;
  }
}

function partOf(part: Buffer): Part {
  const end = part.indexOf('\r\n\r\n');
  const head = part.subarray(0, end).toString('utf8');
  return {
    name: / name="([^"]*)"/.exec(head)?.[1] ?? '',
    filename: / filename="([^"]*)"/.exec(head)?.[1],
    bytes: part.subarray(end + 4),
  };
}
