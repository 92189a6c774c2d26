import { form, type Here } from '../src/chat/command.ts';
import { alsoNamed, bare, otherwise, required, usually } from '../src/chat/option.ts';
import { choice, date, length, whole, words } from '../src/chat/option-kinds.ts';
import { reply } from '../src/chat/reply.ts';
import { scheduled } from '../src/guild/schedule.ts';
import { wrong } from '../src/measure/result.ts';
import { assumedNote } from './assumed.ts';
import { withCribCaution } from './cautions.ts';
import { manyWords } from './count-field.ts';
import { shownMonth } from './month-look.ts';
import { sharedOptions, sharedOut } from './month-shared.ts';
import { monthOption, whichMonth } from './which-month.ts';
import { mayArrange } from './which-one.ts';

const MOST_PARTS = 60;

export const openMonthForm = form({
  name: 'open',
  summary: 'Share a quilt or blocks out over months or weeks, in equal lengths of seam',
  examples: [
    '/month open name:Garden rosettes:7 rounds:2 path:one parts:12 first:2027-01-01',
    '/month open name:Field field:60x72in size:1in parts:12 every:week catchup:4',
    '/month open name:Sampler list:rosette 3 x4, star 4 x4, block x12 parts:6',
  ],
  options: {
    name: required(words('What it is called', 60, 'Garden')),
    ...sharedOptions,
    size: usually(length('The finished side of one patch'), '1in'),
    parts: otherwise(
      alsoNamed(whole('How many blocks it is shared out in', 1, MOST_PARTS, '12'), 'part'),
      12,
    ),
    every: otherwise(
      choice('How far apart the blocks are', [
        { name: 'month', title: 'each month', words: ['monthly'] },
        { name: 'two-weeks', title: 'every two weeks', words: ['fortnight'] },
        { name: 'week', title: 'each week', words: ['weekly'] },
        { name: 'day', title: 'each day', words: ['daily'] },
      ]),
      'month',
    ),
    catchup: otherwise(
      whole('A free turn to catch up after so many blocks; 0 for none', 0, MOST_PARTS, '6'),
      0,
    ),
    first: usually(date('The day the first block opens'), 'today'),
    place: usually(words('The room or channel it is held in', 80, 'home'), 'here'),
  },
  keeps: true,
  async run(values, here) {
    const refused = mayArrange(here, '/month open');
    if (refused) return refused;
    const { name, parts, every, catchup: catchUp, first = here.today, size = 1 } = values;
    const taken = (await here.facts.months.all(here.guild)).find(
      (one) => one.open && one.name.toLowerCase() === name.toLowerCase(),
    );
    if (taken) return wrong('name-taken', { name: taken.name, number: taken.number, instead: '' });
    const shared = sharedOut(values, size, parts, here.say);
    if (!shared.ok) return manyWords(shared);
    const place =
      values.place === undefined || values.place.toLowerCase() === 'here' ? here.place : values.place;
    const terms = { name, of: shared.value.words, size, first, every, place };
    const opened = await here.facts.months.add(
      here.guild,
      terms,
      scheduled(shared.value.blocks, { first, every, catchUp }),
    );
    const shown = await shownMonth(opened, here);
    const assumed = [
      ...(here.given.has('parts') ? [] : ['12 blocks']),
      ...(here.given.has('every') ? [] : ['a block each month']),
      ...(here.given.has('size') ? [] : [`${here.say.plain(1)} side`]),
    ];
    const told = reply({
      ...shown,
      title: `${opened.name} is open`,
      notes: [...shown.notes, ...assumedNote(assumed)],
    });
    return withCribCaution(told, values.field?.bed);
  },
});

export const closeMonthForm = form({
  name: 'close',
  summary: 'Close a block of the month; what was finished stays',
  examples: ['/month close', '/month close Garden'],
  options: { month: bare(monthOption) },
  keeps: true,
  run: (values, here) => turn('close', values.month, here),
});

export const reopenMonthForm = form({
  name: 'reopen',
  summary: 'Open a closed block of the month again',
  examples: ['/month reopen', '/month reopen Garden'],
  options: { month: bare(monthOption) },
  keeps: true,
  run: (values, here) => turn('reopen', values.month, here),
});

async function turn(way: 'close' | 'reopen', named: string | undefined, here: Here) {
  const refused = mayArrange(here, `/month ${way}`);
  if (refused) return refused;
  const found = await whichMonth(named, here, way === 'close' ? 'open' : 'closed');
  if ('asks' in found) return found.asks;
  if (!found.ok) return found;
  const turned = await here.facts.months.turn(found.value, way === 'reopen');
  const shown = await shownMonth(turned, here);
  const back = way === 'close' ? 'reopen' : 'close';
  return reply({
    ...shown,
    title: `${turned.name} is ${way === 'close' ? 'closed' : 'open again'}`,
    choices: [
      { label: back === 'reopen' ? 'Reopen it' : 'Close it', ask: `/month ${back} month:${turned.number}` },
    ],
  });
}
