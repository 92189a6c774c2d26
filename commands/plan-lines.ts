import { type Arrangement, inEachRow } from '../src/calculator/layouts/arrangement.ts';
import { fillsQuilt, type Plan } from '../src/calculator/plan/plan.ts';
import type { Here } from '../src/chat/command.ts';
import { decimal, grouped } from '../src/measure/ruler.ts';
import { capital, daysWords, dayWords, many, range } from '../src/measure/speech.ts';
import { cutWords, layoutWords, partWords, shapesWords } from './plan-roles.ts';
import { weeksWords } from './time-words.ts';

export const planTitle = (
  plan: Plan,
  { here, name }: { readonly here: Here; readonly name?: string },
): string => (name ? `${name}: ${layoutWords(plan, here.say)}` : capital(layoutWords(plan, here.say)));

/** The lines above the list: counts, size, sewing, and what comes before the sewing. */
export function planLines(plan: Plan, here: Here): string[] {
  return [
    patchLine(plan),
    cutWords(plan, here.say),
    ...sizeLine(plan, here),
    ...sewingLines(plan),
    beforeLine(plan),
  ];
}

const FEW_PARTS = 5;

function patchLine({ roles, top }: Plan): string {
  const all = `${shapesWords(roles)}`;
  if (roles.length < 2 || roles.length > FEW_PARTS) return `${all}.`;
  const parts = roles.map(partWords).join(', ');
  const one = new Set(roles.map(({ shape }) => shape)).size === 1;
  return one ? `${all}: ${parts}.` : `${grouped(top.total)} patches: ${all}.`;
}

function sizeLine(plan: Plan, { say }: Here): string[] {
  const { top, finishing, wish } = plan;
  const { size, joined, many: number, arrangement } = top;
  const { quilt } = wish;
  const trimmed = quilt && fillsQuilt(wish) && arrangement ? ', trimmed' : '';
  const made = size
    ? [
        `${joined || number === 1 ? 'Finishes at' : 'Each finishes at'} ${say.size(size.width, size.height)}${trimmed}`,
      ]
    : [];
  const border = finishing?.border
    ? [`${say.size(finishing.size.width, finishing.size.height)} with its border`]
    : [];
  const on = quilt && !fillsQuilt(wish) ? [`sewn on ${say.size(quilt.width, quilt.height)}`] : [];
  const rows = arrangement?.kind === 'rows' ? `${rowWords(arrangement)}. ` : '';
  const words = [...made, ...on, ...border].join('; ');
  return words === '' ? [] : [`${rows}${capital(words)}.`];
}

/** "10 rows of 7", or "10 rows, 7 and 8 by turns". */
function rowWords(stand: Extract<Arrangement, { kind: 'rows' }>): string {
  const [first, second] = inEachRow(stand);
  const each =
    first === second ? ` of ${grouped(first)}` : `, ${grouped(first)} and ${grouped(second)} by turns`;
  return stand.rows === 1 ? `One row of ${grouped(first)}` : `${grouped(stand.rows)} rows${each}`;
}

function sewingLines({ sewing, done }: Plan): string[] {
  if (!sewing) return [];
  const hours = range(hoursWords(sewing.minutesLow), hoursWords(sewing.minutesHigh));
  return [
    `${many(sewing.seams, 'seam', 'seams')}, ${hours} of sewing.`,
    ...(done ? [`Sewn in ${weeksWords(sewing)}, done ${daysWords(done.earliest, done.latest)}.`] : []),
  ];
}

function beforeLine({ before, papers }: Plan): string {
  const hours = range(hoursWords(before.low), hoursWords(before.high));
  return `Before that, ${hours} of cutting${papers.length > 0 ? ' and basting' : ''}.`;
}

export const hoursWords = (total: number): string =>
  total < 90 ? `${decimal(total, 0)} min` : `${decimal(total / 60, total < 600 ? 1 : 0)} h`;

/** What a kept plan was worked out with, in one line. */
export function workedWith({ wish }: Plan, { say }: Here): string {
  const { seam, width, spare, shrink, method, stitches, pace, hours, start } = wish;
  return `Worked with ${[
    `${say.plain(seam)} seam`,
    `${say.plain(width)} usable width`,
    spare > 0 ? `${decimal(spare * 100, 1)}% to spare` : 'nothing to spare',
    ...(shrink > 0 ? [`${decimal(shrink * 100, 1)}% shrinkage`] : []),
    `${method === 'whip' ? 'whipstitch over paper' : 'running stitch'}, ${decimal(stitches, 1)} an inch`,
    ...(pace === undefined ? [] : [`${decimal(pace, 2)} min a seam`]),
    `${many(hours, 'hour', 'hours')} a week from ${dayWords(start)}`,
  ].join(', ')}.`;
}
