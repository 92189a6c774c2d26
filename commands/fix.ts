import { type Command, form } from '../src/chat/command.ts';
import { bare, usually } from '../src/chat/option.ts';
import { count, reply } from '../src/chat/reply.ts';
import { renewed } from '../src/guild/challenge-choices.ts';
import { wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { lineWords, totalWords } from './challenge-words.ts';
import { dayFits, pictureOption } from './log.ts';
import { otherUnit } from './log-doubts.ts';
import { dayOption, minutesOption, noteOption, piecesOption } from './log-words.ts';
import { lineOption, ownLine, whoseLine } from './own-line.ts';
import { challengeOption } from './which-challenge.ts';

const fix: Command = {
  name: 'fix',
  summary: 'Put a log right',
  forms: [
    form({
      name: '',
      summary: 'Put a log right: your last one, or one by its number. The book keeps what it was',
      examples: ['/fix pieces:2', '/fix 17 pieces:2', '/fix 17 day:2026-12-02 minutes:80'],
      options: {
        line: usually(bare(lineOption), 'your last log'),
        pieces: piecesOption,
        minutes: minutesOption,
        day: dayOption,
        picture: pictureOption,
        challenge: challengeOption,
        note: { ...noteOption, bare: false },
      },
      keeps: true,
      async run({ line: number, challenge, pieces: sewn, ...rest }, here) {
        const changes = { ...rest, pieces: sewn?.count };
        if (Object.values(changes).every((value) => value === undefined))
          return wrong('nothing-to-change', { example: 'pieces:2', instead: '/fix pieces:2' });
        const found = await ownLine({ line: number, challenge }, here);
        if ('asks' in found) return found.asks;
        if (!found.ok) return found;
        const { of, line, member } = found.value;
        if (sewn?.of && sewn.of !== of.counting) return otherUnit(of, sewn);
        const { pieces = line.pieces, minutes = line.minutes, day = line.day } = changes;
        const { note = line.note, picture = line.picture } = changes;
        const problem = dayFits(of, day, true, here);
        if (problem) return problem;
        const { facts, who, now } = here;
        const correction = { member, by: who, of: line.number, at: now } as const;
        await facts.challenges.write(of, {
          ...correction,
          kind: 'back',
          day: line.day,
          pieces: -line.pieces,
          minutes: line.minutes === null ? null : -line.minutes,
        });
        const right = { pieces, minutes, day, note, picture };
        const written = await facts.challenges.write(of, { ...correction, kind: 'log', ...right });
        const { total, mine, number: next } = written;
        const said = { ...line, ...right, of: null };
        return reply({
          title: of.name,
          lines: [
            `Put right: ${whoseLine(found.value, here)}no. ${grouped(line.number)} is now ${lineWords(said, of)}.`,
            `It was ${lineWords({ ...line, of: null }, of)}.`,
            `${totalWords({ ...of, total })}. ${member.id === who.id ? 'Yours' : 'Hers'}: ${grouped(mine)}.`,
          ],
          figures: { logged: count(pieces), total: count(total), mine: count(mine), line: count(next) },
          choices: [{ label: `Take no. ${next} back`, ask: `/undo ${next} challenge:${of.number}` }],
          notes: ['The book keeps what it was: `/challenge history`'],
          renews: renewed(of),
        });
      },
    }),
  ],
};

export default fix;
