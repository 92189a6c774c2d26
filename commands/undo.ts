import { type Command, form } from '../src/chat/command.ts';
import { bare, usually } from '../src/chat/option.ts';
import { count, reply } from '../src/chat/reply.ts';
import { renewed } from '../src/guild/challenge-choices.ts';
import type { Line } from '../src/guild/challenge-facts.ts';
import { nounFor } from '../src/guild/counted.ts';
import { grouped } from '../src/measure/ruler.ts';
import { dayWords } from '../src/measure/speech.ts';
import { totalWords } from './challenge-words.ts';
import { dayOption } from './log-words.ts';
import { lineOption, ownLine, whoseLine, whoseOption } from './own-line.ts';
import { challengeOption } from './which-challenge.ts';

const undo: Command = {
  name: 'undo',
  summary: 'Take a log back',
  forms: [
    form({
      name: '',
      summary: 'Take a log back: your last one, or one by its number. The book keeps both',
      examples: ['/undo', '/undo 17', '/undo 17 challenge:Spring'],
      options: {
        line: usually(bare(lineOption), 'your last log'),
        challenge: challengeOption,
        whose: whoseOption,
        day: { ...dayOption, summary: 'The day whose last log it is', bare: false },
      },
      keeps: true,
      async run(values, here) {
        const found = await ownLine(values, here);
        if ('asks' in found) return found.asks;
        if (!found.ok) return found;
        const { of, line, member } = found.value;
        const { facts, who, now } = here;
        const { number, total, mine } = await facts.challenges.write(of, {
          kind: 'back',
          member,
          by: who,
          day: line.day,
          pieces: -line.pieces,
          minutes: line.minutes === null ? null : -line.minutes,
          of: line.number,
          at: now,
        });
        const before = line.of === null ? undefined : await facts.challenges.line(of, line.of);
        const noun = nounFor(of.counting, line.pieces);
        const own = member.id === who.id;
        return reply({
          title: of.name,
          lines: [
            `Taken back: ${whoseLine(found.value, here)}no. ${grouped(line.number)}, ${grouped(line.pieces)} ${noun} on ${dayWords(line.day)}.`,
            `${totalWords({ ...of, total })}. ${own ? 'Yours' : 'Hers'}: ${grouped(mine)}.`,
          ],
          figures: {
            logged: count(-line.pieces),
            total: count(total),
            mine: count(mine),
            line: count(number),
          },
          choices: own
            ? [
                { label: 'Log it again', ask: again(line, of.number) },
                ...(before ? [{ label: 'As it was before the fix', ask: again(before, of.number) }] : []),
              ]
            : [],
          notes: ['The book keeps both lines: `/challenge history`'],
          renews: renewed(of),
        });
      },
    }),
  ],
};

export default undo;

/** The log once more; its note where no words of it would be taken for an option's name. */
function again({ pieces, day, minutes, note }: Line, challenge: number): string {
  const time = minutes === null ? '' : ` minutes:${minutes}`;
  const noted = note === '' || /[:=]/.test(note) ? '' : ` note:${note}`;
  return `/log pieces:${pieces} day:${day}${time} challenge:${challenge}${noted}`;
}
