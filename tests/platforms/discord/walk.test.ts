import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { commands } from '../../../commands/index.ts';
import { IN_WORDS, registrations, withoutPlace } from '../../../src/platforms/discord/register.ts';
import { alone } from '../../commands/asking.ts';
import { examplesIn } from '../../readme/made.ts';
import { BEA, type Who } from '../../standin/discord/events.ts';
import { type Offered, offeredFor } from '../../standin/discord/offered.ts';
import { BOT, type Seen } from '../../standin/discord/standin.ts';
import { buttonsOf, embedOf, givenAs, running } from './bot.ts';
import { type DeclaredForm, declaredForms, examplesOf, kindOf } from './declared.ts';

/** In the days of the examples: what they open has begun. */
const NOW = new Date('2026-12-04T18:00:00Z');

/** What changes something kept is not the same the second time. */
const CHANGES = /^\/plan (?:keep|show|change|remove)|^\/kit plan:/;

const README = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');

const titleOf = (seen: Seen) => embedOf(seen).title ?? '';
const isFault = (seen: Seen) => ['My fault', 'Not now', 'Too old'].includes(titleOf(seen));

/** The bot in a guild of its own, with ways to ask it. */
async function opened(now = NOW) {
  const { standIn, logged } = await running({ now: () => now });
  const at = now.getTime();
  return {
    standIn,
    logged,
    say: (words: string) =>
      standIn.deliver({ who: BEA, does: 'say', content: `<@${BOT.id}> ${words}`, bot: BOT.id, at }),
    give: ({ name, sub }: DeclaredForm, words: Readonly<Record<string, string>>) => {
      const command = sub ? { name, sub } : { name };
      const options = givenAs(standIn, command, words);
      return standIn.deliver({ who: BEA, does: 'slash', ...command, options, at });
    },
    press: (customId: string, who: Who = BEA) => standIn.deliver({ who, does: 'press', customId, at }),
    submit: (customId: string, values: Readonly<Record<string, string>>) =>
      standIn.deliver({ who: BEA, does: 'submit', customId, values, at }),
  };
}

describe('every command, walked from its declaration', () => {
  test('every form is answered to the options as they are offered, and breaks no rule', async () => {
    const { standIn, logged, give } = await opened();
    for (const declared of declaredForms) {
      const titles: string[] = [];
      for (const { options } of examplesOf(declared)) titles.push(titleOf(await give(declared, options)));
      expect(titles, `/${declared.name} ${declared.sub ?? ''}`).toContainEqual(
        expect.not.stringMatching(/^(?:Not yet|My fault|Not now)$/),
      );
    }
    expect(standIn.faults).toEqual([]);
    expect(logged.filter(({ level }) => level === 'fault' || level === 'error')).toEqual([]);
  });

  test('every option is taken as it is offered, each by its name and its kind once', async () => {
    const { standIn, give } = await opened();
    const tried = new Set<string>();
    for (const declared of declaredForms) {
      const { options } = declared.form;
      const needed = Object.entries(options).filter(([, option]) => option.required);
      for (const [name, option] of Object.entries(options)) {
        if (tried.has(`${name} ${kindOf(option)}`)) continue;
        tried.add(`${name} ${kindOf(option)}`);
        const words = Object.fromEntries(
          [...needed, [name, option] as const].map(([key, one]) => [key, one.example]),
        );
        const seen = await give(declared, words);
        expect(isFault(seen), `${declared.name} ${JSON.stringify(words)}`).toBe(false);
        expect(embedOf(seen).description ?? '', name).not.toMatch(/I do not know the option/);
      }
    }
    const kinds = new Set(declaredForms.flatMap(({ form }) => Object.values(form.options).map(kindOf)));
    expect(new Set([...tried].map((one) => one.slice(one.indexOf(' ') + 1)))).toEqual(kinds);
    expect(standIn.faults).toEqual([]);
  });

  test('an example is answered alike whether it is typed to the bot or given with its options', async () => {
    const { standIn, say, give } = await opened();
    for (const declared of declaredForms)
      for (const { typed, options } of examplesOf(declared)) {
        if (!alone.includes(typed)) continue;
        const said = await say(typed);
        const given = await give(declared, options);
        if (CHANGES.test(typed)) continue;
        expect(titleOf(said), typed).toBe(titleOf(given));
        expect(titleOf(given), typed).not.toBe('Not yet');
      }
    expect(standIn.faults).toEqual([]);
  });

  test('every button is answered, and every form behind one can be filled in', async () => {
    const { standIn, give, press, submit } = await opened();
    const pressed = new Set<string>();
    let filledIn = 0;
    const tryButton = async (label: string, id: string) => {
      const seen = await press(id);
      expect(isFault(seen), label).toBe(false);
      if (seen.kind !== 'modal') return;
      expect(isFault(await submit(String(seen.body.custom_id), placeholdersOf(seen))), label).toBe(false);
      filledIn++;
    };
    for (const declared of declaredForms)
      for (const { options } of examplesOf(declared))
        for (const { label, custom_id } of buttonsOf(await give(declared, options))) {
          // Those alike but for their numbers do the same.
          const alike = `${label} ${custom_id}`.replace(/\d+/g, '0');
          if (pressed.has(alike)) continue;
          pressed.add(alike);
          await tryButton(label, custom_id);
        }
    expect(pressed.size).toBeGreaterThan(20);
    expect(filledIn).toBeGreaterThan(0);
    expect(standIn.faults).toEqual([]);
  });

  test('every example of the README is answered as it stands there', async () => {
    const { standIn, say } = await opened(new Date('2026-12-01T10:00:00Z'));
    for (const words of examplesIn(README)) {
      const [, title = ''] = README.split(`> ${words}\n`)[1]?.match(/^([^\n]*)\n/) ?? [];
      expect(titleOf(await say(words)).replaceAll('\\', ''), words).toContain(title);
    }
    expect(standIn.faults).toEqual([]);
  });
});

/** A form filled in as it suggests itself. */
const placeholdersOf = ({ body }: Seen): Record<string, string> =>
  Object.fromEntries(
    ((body.components ?? []) as { components: { custom_id: string; placeholder: string }[] }[]).flatMap(
      ({ components }) => components.map((input) => [input.custom_id, input.placeholder]),
    ),
  );

describe('what the platform has no room for', () => {
  test('no option is lost: what has no place of its own is told where it can be typed', async () => {
    const registered = await registrations(commands);
    let without = 0;
    for (const { name, sub, form } of declaredForms) {
      const offered = offeredFor(registered, sub ? { name, sub } : { name }) ?? [];
      expect(offered.length).toBeLessThanOrEqual(25);
      const none = withoutPlace(form);
      without += none.length;
      for (const option of Object.keys(form.options))
        expect(
          offered.some((one) => one.name === option) !== none.includes(option),
          `${name} ${option}`,
        ).toBe(true);
      const more = registeredMore(offered);
      for (const option of none) expect(more).toContain(`${option}:`);
      if (none.length === 0) expect(more).toBeUndefined();
    }
    expect(without).toBeGreaterThan(0);
  });

  test('what is typed there counts beside what is given', async () => {
    const { standIn, give } = await opened();
    const yardage = declaredForms.find(({ name }) => name === 'yardage');
    if (!yardage) throw new Error('no yardage');
    const given = await give(yardage, { pieces: '240', shape: 'hexagon', flats: '2in', spare: '10%' });
    expect(titleOf(given)).toBe('Hexagons, 2 in flat to flat: 264 patches');
    expect(standIn.faults).toEqual([]);
  });

  test('no summary is cut', async () => {
    for (const { name, sub, form } of declaredForms) {
      const offered = offeredFor(await registrations(commands), sub ? { name, sub } : { name }) ?? [];
      for (const { name: option, description = '' } of offered)
        expect(description, `${name} ${sub} ${option}`).toContain(form.options[option]?.summary ?? '');
    }
  });
});

/** What is said of the option that takes the others in words. */
const registeredMore = (offered: readonly Offered[]): string | undefined =>
  offered.find(({ name }) => name === IN_WORDS)?.description;
