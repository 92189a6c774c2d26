import { createHash, webcrypto } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reply } from '../../../src/chat/reply.ts';
import { lockFile, typeOf } from '../../../src/platforms/matrix/attachment.ts';
import { Loops } from '../../../src/platforms/matrix/loops.ts';
import { Outbox, transactionOf } from '../../../src/platforms/matrix/outbox.ts';
import { Reach } from '../../../src/platforms/matrix/reach.ts';
import { waitOf } from '../../../src/platforms/matrix/trouble.ts';
import { Turns } from '../../../src/platforms/matrix/turns.ts';
import { wordsOf } from '../../../src/platforms/matrix/words.ts';
import { htmlFaults } from '../../standin/matrix/rules.ts';

/** What a reader sees of a text with marks; an ampersand's own name is read last. */
const readOf = (html: string): string =>
  html
    .replace(/<br>|<\/t[rdh]>|<\/thead>|<table>/g, '\n')
    .replace(/<[^>]*>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');

/** What a member may have written, and mark-up that she may have hoped for. */
const hostile = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom(
    '<script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    '</td></tr></table><h1>',
    '<a href="javascript:alert(1)">x</a>',
    '&lt;b&gt;',
    '&#60;b&#62;',
    '`</code><b>`',
    '"><mx-reply>',
    '<!-- ',
    ']]>',
    '<@bee:bees.test>',
    '\u202Eevil',
  ),
);
const line = hostile.map((text) => text.replaceAll('\n', ' '));

describe('the words of a message', () => {
  test('whatever is in them, nothing of it becomes mark-up, and both bodies read the same', () => {
    const replies = fc.record({
      title: line,
      lines: fc.array(line, { maxLength: 4 }),
      asks: fc.option(line),
      notes: fc.array(line, { maxLength: 2 }),
      cautions: fc.array(line, { maxLength: 2 }),
      choices: fc.array(fc.record({ label: line, ask: fc.constant('/help') }), { maxLength: 12 }),
      table: fc.option(
        fc.record({
          columns: fc.tuple(line, line),
          rows: fc.array(fc.tuple(line, line), { maxLength: 3 }),
        }),
      ),
    });
    fc.assert(
      fc.property(replies, (parts) => {
        const { plain, html } = wordsOf(reply(parts), '!');
        expect(htmlFaults(html)).toEqual([]);
        const seen = (text: string) => text.replace(/[\s|]+/gu, '');
        expect(seen(readOf(html))).toBe(seen(plain));
      }),
      { numRuns: 500 },
    );
  });

  test('asks to type are shown with the sign that they are typed with', () => {
    const { plain, html } = wordsOf(
      reply({
        lines: ['Try `/cut hexagon 1in`, 1/2 in apart, and/or `/me set`'],
        table: { columns: ['ask'], rows: [['/count'], ['1/2 in']] },
        choices: [
          { label: '', ask: '/help' },
          { label: 'Log', ask: '/log', fillIn: ['pieces', 'note'] },
        ],
      }),
      '?',
    );
    expect(plain).toBe(
      'Try ?cut hexagon 1in, 1/2 in apart, and/or ?me set\nask\n?count\n1/2 in\n1️⃣ ?help\nLog: ?log pieces: note:',
    );
    expect(html).toContain('<code>?cut hexagon 1in</code>');
  });

  test.each([
    ['many lines', reply({ lines: Array.from({ length: 5000 }, (_, i) => `line ${i}`) })],
    ['one endless line', reply({ lines: ['x'.repeat(100_000)] })],
    ['signs of four bytes', reply({ lines: Array.from({ length: 4000 }, () => '🧵🐝') })],
    ['marks that grow', reply({ lines: Array.from({ length: 4000 }, () => '"&<>"') })],
  ])('too long for one event, twice over and locked: %s', (_what, long) => {
    const words = wordsOf(long, '!');
    // An edit says them twice; locking makes four bytes of three ("Size limits": 65,536 bytes an event).
    const bytes = Buffer.byteLength(JSON.stringify([words.plain, words.html, words.plain, words.html]));
    expect((bytes * 4) / 3).toBeLessThan(60_000);
    expect(words.plain.endsWith('The rest is in the file below.')).toBe(true);
    expect(words.whole).toBe(long.lines.join('\n'));
    expect(htmlFaults(words.html)).toEqual([]);
  });
});

describe('a file for an encrypted room', () => {
  test('is unlocked by what is sent beside it, as the specification says, and by nothing less', async () => {
    const bytes = Buffer.from('a picture of a hexagon '.repeat(100));
    const { bytes: locked, file } = lockFile(bytes);
    expect(locked.equals(bytes)).toBe(false);
    expect(createHash('sha256').update(locked).digest('base64').replace(/=+$/, '')).toBe(file.hashes.sha256);
    const counter = Buffer.from(file.iv, 'base64');
    expect(counter.subarray(8)).toEqual(Buffer.alloc(8));
    // The Web's own cryptography, to which the specification's words refer.
    const key = await webcrypto.subtle.importKey('jwk', file.key as never, { name: 'AES-CTR' }, true, [
      'decrypt',
    ]);
    const unlocked = await webcrypto.subtle.decrypt({ name: 'AES-CTR', counter, length: 64 }, key, locked);
    expect(Buffer.from(unlocked)).toEqual(bytes);
    expect(lockFile(bytes).file.key).not.toEqual(file.key);
  });

  test.each([
    ['a.png', 'image/png'],
    ['a.PDF', 'application/pdf'],
    ['a.csv', 'text/csv'],
    ['a', 'application/octet-stream'],
  ])('%s is %s', (name, type) => {
    expect(typeOf(name)).toBe(type);
  });
});

test('a name for a send is the same for the same, another for another, and fits into a path', () => {
  fc.assert(
    fc.property(
      fc.array(fc.string(), { minLength: 1 }),
      fc.array(fc.string(), { minLength: 1 }),
      (one, other) => {
        expect(transactionOf(...one)).toBe(transactionOf(...one));
        expect(transactionOf(...one)).toMatch(/^[\w-]{10,40}$/);
        if (JSON.stringify(one) !== JSON.stringify(other))
          expect(transactionOf(...one)).not.toBe(transactionOf(...other));
      },
    ),
  );
  expect(transactionOf('ab', 'c')).not.toBe(transactionOf('a', 'bc'));
});

test.each([
  [500, null, 500],
  [500, '2', 2000],
  [undefined, '0', 0],
  [undefined, null, null],
  ['500', null, null],
  [-1, null, null],
  [Number.NaN, 'Wed, 21 Oct 2026 07:28:00 GMT', null],
])('told %s in the body and %s in the header, it waits %s ms', (body, header, wait) => {
  expect(waitOf(body, header)).toBe(wait);
});

test('lost and found are said once, whoever finds it out, however often', () => {
  const said: string[] = [];
  const counted: string[] = [];
  const say = (_details: object, words: string) => void said.push(words);
  const reach = new Reach({
    log: { debug: say, info: say, warn: say, error: say },
    watch: { count: (what) => void counted.push(what), took: () => {} },
  });
  reach.found('to send');
  for (let i = 0; i < 3; i++) {
    reach.lost('to sync', new Error('away'));
    reach.lost('to send', new Error('away'));
  }
  reach.found('to send');
  expect(said).toEqual(['the homeserver cannot be reached, or fails; trying on']);
  reach.found('to sync');
  reach.found('to sync');
  expect(said.slice(1)).toEqual(['the homeserver is back']);
  expect(counted).toEqual(['reconnects_total']);
});

test('what fails because its client was put away for a new login is done with the new one; other failures are told', async () => {
  const silent = () => {};
  const log = { debug: silent, info: silent, warn: silent, error: silent };
  const watch = { count: silent, took: silent };
  const clients = ['old', 'new'];
  const outbox = new Outbox({
    ...{ log, watch, reach: new Reach({ log, watch }) },
    client: async () => clients[0] as never,
  });
  const asked: unknown[] = [];
  const act = async (client: unknown) => {
    asked.push(client);
    if (client === 'new') return 'done';
    clients.shift();
    throw new Error('the keys of this client are closed');
  };
  expect(await outbox.call('!room', act)).toBe('done');
  expect(asked).toEqual(['old', 'new']);
  const fails = outbox.call('!room', async () => {
    throw new Error('a fault of ours');
  });
  await expect(fails).rejects.toThrow('a fault of ours');
});

test('works about one thing are done in their order, whatever becomes of them; others do not wait', async () => {
  const turns = new Turns();
  const done: string[] = [];
  const gate = Promise.withResolvers<void>();
  const first = turns.take('a', async () => {
    await gate.promise;
    done.push('a1');
    throw new Error('it failed');
  });
  const second = turns.take('a', async () => void done.push('a2'));
  await turns.take('b', async () => void done.push('b1'));
  gate.resolve();
  await expect(first).rejects.toThrow('it failed');
  await second;
  expect(done).toEqual(['b1', 'a1', 'a2']);
});

test('twelve times a minute is how people talk; more is said once; after a minute all is well again', () => {
  const loops = new Loops();
  const heard = Array.from({ length: 15 }, (_, i) => loops.heard('eve', i * 1000));
  expect(heard.filter((one) => one === 'as people do')).toHaveLength(12);
  expect(heard.slice(12)).toEqual(['too often from now on', 'too often', 'too often']);
  expect(loops.heard('ada', 15_000)).toBe('as people do');
  expect(loops.heard('eve', 75_001)).toBe('as people do');
});
