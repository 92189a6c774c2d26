import type { Answer, Here } from '../src/chat/command.ts';
import { suggesting } from '../src/chat/option.ts';
import { words } from '../src/chat/option-kinds.ts';
import { listed, listedAs } from '../src/chat/option-listed.ts';
import { reply } from '../src/chat/reply.ts';
import type { Challenge, LineInBook, Person } from '../src/guild/challenge-facts.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { dayWords } from '../src/measure/speech.ts';
import { lineWords } from './challenge-words.ts';
import { MOST_NAMED, whichChallenge } from './which-challenge.ts';

/** So many of her last logs are suggested while she types. */
const MOST_SUGGESTED = 10;

/** A log by its number in the challenge's book; the asker's last one where none is named. */
export const lineOption = suggesting(
  listed('Which log, by its number', 1_000_000_000, '17'),
  async ({ facts, guild, member }) => {
    const logs = await facts.challenges.lastLogs(guild, member, MOST_SUGGESTED);
    const names = new Map((await facts.challenges.all(guild)).map((of) => [of.number, of]));
    return logs.flatMap((log) => {
      const of = names.get(log.challenge);
      return of?.open ? [listedAs(log.number, `${lineWords(log, of)}, ${of.name}`)] : [];
    });
  },
);

const named = words('Whose last log, for an organiser', 60, 'Bea');
const HERS = /^(\p{L}[\p{L}\d ’'-]{0,59}?)['’]s(?: last)?(?: (?:log|entry|one))?(?!\S)/iu;

/** Whose last log it is: `whose:Bea`, or "Bea's last". */
export const whoseOption: typeof named = {
  ...named,
  bare: true,
  bareWhen: HERS,
  take(text, context) {
    const found = HERS.exec(text);
    return found
      ? ok({ value: found[1]?.trim() ?? '', rest: text.slice(found[0].length) })
      : named.take(text, context);
  },
};

/** A log that may be corrected by the asker, with its challenge. */
export interface OwnLine {
  readonly of: Challenge;
  readonly line: LineInBook;
  /** Whose it is, as she is called. */
  readonly member: Person;
}

/** Which log: by its number, or the last one, of another member or of a day where that was said. */
export interface LineSought {
  readonly line?: number | undefined;
  readonly challenge?: string | undefined;
  readonly whose?: string | undefined;
  readonly day?: string | undefined;
}

type Sought = Promise<Result<OwnLine> | { readonly asks: Answer }>;

/** The log that is meant, if the asker may correct it: her own, one she wrote, or any where she is an organiser. */
export async function ownLine(sought: LineSought, here: Here): Sought {
  const { line: number, challenge, whose, day } = sought;
  const beside = [whose !== undefined ? ['whose'] : [], day !== undefined ? ['day'] : []].flat();
  if (number !== undefined && beside.length > 0)
    return wrong('one-of-these', { got: ['the number', ...beside].join(', '), instead: '' });
  if (number === undefined && whose !== undefined) return lastOfAnother(whose, sought, here);
  if (number === undefined) return lastLine(sought, here);
  const found = await whichChallenge(challenge, here, 'open');
  if ('asks' in found || !found.ok) return found;
  const of = found.value;
  const line = await here.facts.challenges.line(of, number);
  if (line?.kind !== 'log') return wrong('line-unknown', { line: grouped(number), name: of.name });
  return corrected(of, line, here);
}

async function lastLine({ challenge, day }: LineSought, here: Here): Sought {
  const { facts, guild, who } = here;
  const found = challenge === undefined ? null : await whichChallenge(challenge, here, 'open');
  if (found && ('asks' in found || !found.ok)) return found;
  const meant = { challenge: found?.value.number, day };
  const [line] = await facts.challenges.lastLogs(guild, who.id, 1, meant);
  const of = found?.value ?? (line && (await facts.challenges.one(guild, line.challenge)));
  return line && of ? corrected(of, line, here) : noLog(day);
}

const noLog = (day: string | undefined) =>
  day === undefined
    ? wrong('nothing-logged', { instead: '' })
    : wrong('nothing-logged-then', { day: dayWords(day), instead: '' });

/** Another member's last log, for an organiser; where several have her name, it is asked which of their logs. */
async function lastOfAnother(whose: string, { challenge, day }: LineSought, here: Here): Sought {
  const found = await whichChallenge(challenge, here, 'open');
  if ('asks' in found || !found.ok) return found;
  const { facts, guild, who } = here;
  const of = found.value;
  const isHers = (name: string) => name.toLowerCase() === whose.toLowerCase();
  if (!who.organiser)
    return isHers(who.name)
      ? lastLine({ challenge, day }, here)
      : wrong('line-not-hers', { whose, instead: '' });
  const parts = (await facts.challenges.parts(of, 'name', MOST_NAMED)).filter(({ name }) => isHers(name));
  const meant = { challenge: of.number, day };
  const lasts = await Promise.all(
    parts.map(async ({ member, name }) => ({
      name,
      line: (await facts.challenges.lastLogs(guild, member, 1, meant))[0],
    })),
  );
  const lines = lasts.flatMap(({ name, line }) => (line ? [{ name, line }] : []));
  const [one, ...more] = lines;
  if (!one) return wrong('nothing-of-hers', { whose, name: of.name, instead: '' });
  return more.length === 0 ? corrected(of, one.line, here) : { asks: askWhose(lines, of) };
}

const askWhose = (
  lines: readonly { readonly name: string; readonly line: LineInBook }[],
  of: Challenge,
): Answer =>
  reply({
    title: of.name,
    asks: 'More than one member is called that. Which log do you mean?',
    choices: lines.slice(0, MOST_SUGGESTED).map(({ name, line }) => ({
      label: `No. ${grouped(line.number)}, ${name}: ${lineWords(line, of)}`,
      ask: `/undo ${line.number} challenge:${of.number}`,
    })),
  });

async function corrected(of: Challenge, line: LineInBook, { who, facts }: Here): Promise<Result<OwnLine>> {
  const number = grouped(line.number);
  if (!of.open) return wrong('together-closed', { name: of.name, instead: '' });
  if (line.member !== who.id && line.by !== who.id && !who.organiser)
    return wrong('line-not-yours', { line: number, instead: '' });
  if (line.takenBackBy !== null)
    return wrong('line-gone', { line: number, by: grouped(line.takenBackBy), instead: '' });
  const names = await facts.challenges.names(of, [line.member]);
  const name = line.member === who.id ? who.name : (names.get(line.member) ?? '');
  return ok({ of, line, member: { id: line.member, name } });
}

/** Whose it is, where it is not the asker's own: "Ada’s ", or nothing. */
export const whoseLine = ({ member }: OwnLine, { who }: Here): string =>
  member.id === who.id ? '' : member.name === '' ? 'nobody’s ' : `${member.name}’s `;
