import type { Answer, Here } from '../src/chat/command.ts';
import { suggesting } from '../src/chat/option.ts';
import { listed, listedAs } from '../src/chat/option-listed.ts';
import type { Challenge, LineInBook, Person } from '../src/guild/challenge-facts.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { lineWords } from './challenge-words.ts';
import { whichChallenge } from './which-challenge.ts';

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

/** A log that may be corrected by the asker, with its challenge. */
export interface OwnLine {
  readonly of: Challenge;
  readonly line: LineInBook;
  /** Whose it is, as she is called. */
  readonly member: Person;
}

/** So many of her last logs are looked through for one in the challenge that is meant. */
const LOOKED_THROUGH = 50;

/** The log that is meant, if the asker may correct it: her own, one she wrote, or any where she is an organiser. */
export async function ownLine(
  number: number | undefined,
  challenge: string | undefined,
  here: Here,
): Promise<Result<OwnLine> | { readonly asks: Answer }> {
  if (number === undefined) return lastLine(challenge, here);
  const found = await whichChallenge(challenge, here, 'open');
  if ('asks' in found || !found.ok) return found;
  const of = found.value;
  const line = await here.facts.challenges.line(of, number);
  if (line?.kind !== 'log') return wrong('line-unknown', { line: grouped(number), name: of.name });
  return corrected(of, line, here);
}

async function lastLine(challenge: string | undefined, here: Here) {
  const logs = await here.facts.challenges.lastLogs(here.guild, here.who.id, LOOKED_THROUGH);
  const found = challenge === undefined ? null : await whichChallenge(challenge, here, 'open');
  if (found && ('asks' in found || !found.ok)) return found;
  const line = logs.find((one) => found === null || one.challenge === found.value.number);
  const of = found?.value ?? (line && (await here.facts.challenges.one(here.guild, line.challenge)));
  if (!line || !of) return wrong('nothing-logged', { instead: '' });
  return corrected(of, line, here);
}

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
