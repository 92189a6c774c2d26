import { describe, expect, test } from 'vitest';
import { document, type ReplyDocument } from '../../src/chat/reply.ts';
import { shownName } from '../../src/chat/shown-name.ts';
import { openAsking } from '../commands/asking.ts';

/** One room of a platform, in which several people talk. */
export interface OpenPlatform {
  /** Somebody says something; gives the answer as it is read there, and the document it was made from. */
  say(who: string, words: string): Promise<{ readonly text: string; readonly document: ReplyDocument }>;
  /** Where the program could hear itself: says something as the program, and tells whether it answered. */
  hearsItself?(words: string): Promise<boolean>;
  close(): Promise<void>;
}

/** What a platform says of itself, to be held to the laws below. */
export interface PlatformDescriptor {
  readonly name: string;
  open(): Promise<OpenPlatform>;
  /** A name as the platform shows it, where that is not as it is. */
  shown?(name: string): string;
}

/** Names that people have, and some that they make up. */
const NAMES = [
  'Ada',
  'Zoë',
  '山田花子',
  'שרה',
  'أمينة',
  '🐝',
  '👩‍👩‍👧‍👦quilter🧵',
  '**Bold**_Bea_~x~',
  '<b>Bea</b>&amp;"\'',
  '`/cut`',
  '@everyone',
  '{{name}}%s',
  '__proto__',
  'constructor',
  "Robert');--",
  'x'.repeat(100),
];

const ASKS = [
  '/cut hexagon 1 1/2in',
  '/cut shape:hexagon size:4in',
  '/cut hexagon 4in',
  '/count rosette rounds:3',
  '/count garden rosettes:7 rounds:2 path:one outer:yes',
  '/count field quilt:60x72in size:1in rows:across',
  '/yield hexagon 1in fat-quarter',
  '/yardage 240 hexagon 1in',
  '/time rosette:2 start:2026-12-01',
  'how many 1 inch hexagons from a fat quarter?',
  '/help',
  '/help cut',
  '/cut hexagon 0',
  'good morning all',
];

const squeezed = (text: string): string => text.replaceAll(/[\s`*_]+/g, ' ').trim();

/** The laws that every platform keeps. */
export function keepsTheContract({ name, open, shown = (as) => as }: PlatformDescriptor): void {
  const within = async (work: (room: OpenPlatform) => Promise<void>) => {
    const room = await open();
    try {
      await work(room);
    } finally {
      await room.close();
    }
  };

  describe(`${name} keeps the contract of platforms`, () => {
    test.each(ASKS)('%s has the same figures as anywhere', (words) =>
      within(async ({ say }) => {
        const there = await say('Ada', words);
        const here = document(await openAsking()(words));
        expect(there.document.command).toBe(here.command);
        expect(there.document.figures).toEqual(here.figures);
        expect(there.document.choices).toEqual(here.choices);
        expect(there.document.error?.code).toBe(here.error?.code);
      }),
    );

    test.each(ASKS)(
      '%s is read whole: title, sentences, table, question, choices, notes, cautions',
      (words) =>
        within(async ({ say }) => {
          const { text, document: of } = await say('Ada', words);
          const read = squeezed(text);
          for (const line of [of.title, ...of.text.split('\n'), of.asks ?? '', ...of.notes, ...of.cautions])
            expect(read).toContain(squeezed(line));
          for (const { label } of of.choices) expect(read).toContain(squeezed(label));
          for (const row of of.table?.rows ?? [])
            for (const word of row.flatMap((cell) => cell.split(' '))) expect(read).toContain(squeezed(word));
          expect(text).not.toContain('undefined');
        }),
    );

    test.each(NAMES)('somebody called %s is answered, and is nobody else', (who) =>
      within(async ({ say }) => {
        expect((await say(who, '/me set seam:3/8in')).document.error).toBeNull();
        expect((await say('Somebody else', '/cut hexagon 1in')).document.notes.join()).toContain(
          '1/4 in seam',
        );
        expect((await say(who, '/cut hexagon 1in')).document.notes.join()).toContain('your 3/8 in seam');
        const own = await say(who, '/me');
        // A name that is longer than a line has room for is cut, with a mark that it is.
        expect(own.document.title).toContain(shownName(who));
        expect(squeezed(own.text)).toContain(squeezed(shown(shownName(who))));
      }),
    );

    test('names that are near are not the same', () =>
      within(async ({ say }) => {
        await say('Ada', '/me set seam:3/8in');
        for (const near of ['ada', 'Ada2', 'Adа']) // the last with a Cyrillic а
          expect((await say(near, '/cut hexagon 1in')).document.notes.join(), near).not.toContain('your');
      }));

    test('every choice, asked in its own words, is answered', () =>
      within(async ({ say }) => {
        const { document: back } = await say('Ada', '/cut hexagon 4in');
        expect(back.choices).toHaveLength(3);
        for (const { ask } of back.choices)
          expect((await say('Ada', ask)).document).toMatchObject({ error: null, asks: null });
      }));

    test('a member may not do an organiser’s work', () =>
      within(async ({ say }) => {
        expect((await say('Ada', '/guild set seam:3/8in')).document.error?.code).toBe('organisers-only');
      }));

    test('many asks at once are each answered', () =>
      within(async ({ say }) => {
        const replies = await Promise.all(
          [1, 2, 3, 4, 5].map((rounds) => say('Ada', `/count rosette rounds:${rounds}`)),
        );
        expect(replies.map(({ document: of }) => of.figures.total?.value)).toEqual([7, 19, 37, 61, 91]);
      }));

    test('it never answers itself, where it can hear itself', () =>
      within(async ({ hearsItself }) => {
        for (const words of ASKS) expect(await hearsItself?.(words), words).not.toBe(true);
      }));
  });
}
