import { randomBytes } from 'node:crypto';

/** A file that goes with a message. */
export interface MessageFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const TYPES: Readonly<Record<string, string>> = {
  png: 'image/png',
  pdf: 'application/pdf',
  csv: 'text/csv; charset=utf-8',
  json: 'application/json',
  txt: 'text/plain; charset=utf-8',
};

const typeOf = (name: string): string => TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';

/**
 * A body of JSON and files in one piece (RFC 7578; the parts are called as the platform wants them). The library
 * would hand its files over as a stream for each, which costs more than all the rest of an answer and cannot be
 * broken off and sent again.
 */
export function multipart(
  json: unknown,
  files: readonly MessageFile[],
): { readonly body: Uint8Array; readonly type: string } {
  const part = (head: string, bytes: Uint8Array) => [
    Buffer.from(`--${BOUNDARY}\r\nContent-Disposition: form-data; ${head}\r\n\r\n`),
    bytes,
    LINE_END,
  ];
  const parts = [
    part('name="payload_json"\r\nContent-Type: application/json', Buffer.from(JSON.stringify(json))),
    ...files.map(({ name, bytes }, i) =>
      part(`name="files[${i}]"; filename="${name}"\r\nContent-Type: ${typeOf(name)}`, bytes),
    ),
  ];
  return {
    body: Buffer.concat([...parts.flat(), Buffer.from(`--${BOUNDARY}--\r\n`)]),
    type: `multipart/form-data; boundary=${BOUNDARY}`,
  };
}

/** Nobody who sends us something to send on can know it. */
const BOUNDARY = `honeycount-${randomBytes(16).toString('hex')}`;
const LINE_END = Buffer.from('\r\n');
