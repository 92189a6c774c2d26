import type { Problem } from '../measure/result.ts';
import { capital } from '../measure/speech.ts';
import { GUILD_WORDINGS } from './guild-wordings.ts';
import { nearestStart } from './near.ts';

type Wording = (problem: Problem, command: string) => string;

const text = (value: Problem[string]): string =>
  Array.isArray(value) ? value.join(', ') : String(value ?? '');
const list = (value: Problem[string]): readonly string[] => (Array.isArray(value) ? value : []);
const quoted = (value: Problem[string]): string => `‘${shown(text(value))}’`;

/** What a member typed, cut to a length that can be read back. */
const shown = (got: string): string => (got.length > 60 ? `${[...got].slice(0, 57).join('')}…` : got);

/** The sentence for each thing that can be wrong: what was read, what was not, what will do. */
export const WORDINGS: Readonly<Record<string, Wording>> = {
  'nothing-asked': () => 'There is nothing to answer yet.',
  'text-long': ({ most }) => `That is more than I read at once. Up to ${text(most)} characters, please.`,
  'control-characters': () =>
    'There are signs in that which cannot be seen. Type it again in plain letters and figures.',
  'command-unknown': ({ got, known }) => `I know no ${quoted(got)}. ${near(got, known, '/')}`,
  'form-unknown': ({ got, known, command }, asked) =>
    `/${command ?? asked} has no ${quoted(got)}. ${near(got, known) || (text(known) ? `It has ${text(known)}.` : '')}`,
  'form-missing': ({ known, command }, asked) => `/${command ?? asked} what: ${text(known)}?`,
  'option-unknown': ({ got, known }) =>
    `I know no ${quoted(got)} here. ${near(got, known) || `There is ${text(known)}.`}`,
  'option-twice': ({ option }) => `${text(option)} is there twice. Say it once.`,
  'option-missing': ({ option, summary, example, read }) =>
    `${text(read) ? `I read ${text(read)}, and` : 'I'} still need ${text(option)}: ${text(summary)}. For example ${text(option)}:${text(example)}.`,
  'option-empty': ({ option, example }) =>
    `Nothing follows ${text(option)}. For example ${text(option)}:${text(example)}.`,
  'option-unread': ({ option, got, known, bounds, example }) =>
    `${text(option)} cannot be ${quoted(got)}. ${near(got, known) || `For example ${text(option)}:${text(example)}${bounds ? ` (${text(bounds)})` : ''}.`}`,
  'below-zero': ({ got, option }) =>
    `${named(option)}${quoted(got)} is below zero. It must be more than nothing.`,
  'too-small': ({ got, option, least, most }) =>
    `${named(option)}${text(got)} is too small. I answer from ${text(least)} to ${text(most)}.`,
  'too-large': ({ got, option, least, most }) =>
    `${named(option)}${huge(got) ? 'that' : text(got)} is too large. I answer from ${text(least)} to ${text(most)}.`,
  'not-whole': ({ got, option }) => `${named(option)}${quoted(got)} is not a whole number.`,
  'not-a-number': ({ option }) => `${named(option)}that is not a number.`,
  'text-too-long': ({ option, got, most }) =>
    `${named(option)}that is ${text(got)} characters. Up to ${text(most)}.`,
  'words-unread': ({ got, known, read, options }) =>
    `I ${text(read) ? `read ${text(read)}, but not` : 'cannot read'} ${quoted(got)}. ${near(got, known) || (text(options) ? `I listen for ${text(options)}.` : 'Nothing more is needed.')}`,
  'zone-unknown': ({ got }) =>
    `I know no time zone ${quoted(got)}. For example zone:Europe/London or zone:America/Chicago.`,
  'day-unread': ({ got }) => `I cannot read the day ${quoted(got)}. For example 2026-12-01, today, tomorrow.`,
  'organisers-only': ({ what }) => `${text(what)} is for the guild’s organisers. Ask one of them to do it.`,
  'size-missing': ({ example }) => `How large is the patch? For example ${text(example)}.`,
  'size-twice': ({ got }) => `The size is there more than once: ${text(got)}. Say it once.`,
  'measure-not-of-shape': ({ shape, measure, known }) =>
    `A ${text(shape)} is not measured by its ${text(measure)}. Use ${text(known)}.`,
  'needs-two-measures': () => 'A rectangle has two measures. For example size:2x3in.',
  'one-measure-only': ({ shape }) => `A ${text(shape)} has one size. For example size:2in.`,
  'nothing-left': ({ got, least }) =>
    `Cut at ${text(got)} there is nothing left inside the seams. Cut more than ${text(least)}.`,
  'not-narrower': () =>
    'A tumbler’s narrow end is narrower than its wide end. For example size:3in narrow:2in.',
  'seam-closes-curve': ({ seam, shape, most }) =>
    `A seam of ${text(seam)} closes up the inner curve of that ${text(shape)}. Keep it under ${text(most)}, or make the patch larger.`,
  'dimension-not-of-shape': ({ shape, option, known }) =>
    `There is no ${text(option)} to ${text(shape)}. It is for ${text(known)}.`,
  'too-many-for-cloth': ({ count, what, least }) =>
    `I find no room for ${text(count)} ${text(what)} in that, not even at ${text(least)}. More cloth, or fewer?`,
  'seam-wider': ({ seam, cloth }) =>
    `A seam of ${text(seam)} is wider than the cloth has room for (${text(cloth)}).`,
  'patch-wider-than-cloth': ({ patch, cloth }) =>
    `A patch of ${text(patch)} does not fit cloth of ${text(cloth)}.`,
  'wider-than-cloth': ({ what, size, cloth }) =>
    `A ${text(what)} of ${text(size)} has no room on cloth of ${text(cloth)}.`,
  'bed-or-mattress': () => 'Which bed? For example queen, or mattress:60x80in.',
  'row-not-that-way': ({ shape, known }) => `A row of ${text(shape)} is checked by ${text(known)}.`,
  'row-not-of-shape': ({ shape }) =>
    `I cannot check a row of ${text(shape)}. I can of hexagons, diamonds, triangles and squares.`,
  'row-all-short': ({ short, expected }) =>
    `The row should be ${text(expected)}: ${text(short)} short of that leaves none. What does it measure?`,
  'plan-what': () => 'What shall I plan? For example field, garden, rosette, stars or blocks, and a size.',
  'plan-all-name': ({ got }) =>
    `I read ${quoted(got)} as the name, and nothing to plan. Put what to plan before name:, or say it with its option, such as quilt:60x72in.`,
  'plan-needs': ({ needs }) => `How much of it? For example ${list(needs).join(' or ')}.`,
  'plan-one-size': ({ shape }) =>
    `I plan loose patches that one size fixes; a ${text(shape)} has two. /yardage answers for those.`,
  'plan-cloth-narrow': ({ cloth }) => `Cloth of ${text(cloth)} is too narrow for the border or the binding.`,
  'plan-name-option': ({ got }) =>
    `A name with ‘${text(got)}:’ in it would be read as an option. Leave out the colon.`,
  'plan-name-taken': ({ got }) =>
    `There is a plan ‘${text(got)}’ already. Take another name, or /plan change it.`,
  'plans-full': ({ most }) => `The guild keeps ${text(most)} plans, and no more. Remove one first.`,
  'plans-none': () => 'No plan is kept yet.',
  'plan-unknown': ({ got, known }) =>
    `I keep no plan ${quoted(got)}. ${near(got, known) || `There is ${list(known).slice(0, 8).join(', ')}.`}`,
  'plan-not-yours': ({ got, owner }) =>
    `‘${text(got)}’ is kept by ${text(owner) || 'nobody now'}. ${owner ? `${text(owner)} or an organiser` : 'An organiser'} can change it.`,
  'plan-unchanged': () => 'What shall change? For example spare:10% or size:3/4in.',
  'cloth-part-unknown': ({ got, known }) =>
    `I cannot tell which part ${quoted(got)} is for. Name the part, then its cloth: ${text(known)}.`,
  'cloth-part-twice': ({ got }) => `${quoted(got)} is given two cloths. One for each part.`,
  'too-many-patches': ({ count, most }) =>
    `That is ${text(count)} patches. I lay out up to ${text(most)}; ask for a smaller piece or larger patches.`,
  'no-patch-fits': ({ quilt }) =>
    `Not one whole patch fits in ${text(quilt)}. A smaller patch, or sides:cover?`,
  'three-shades': ({ got }) =>
    `Blocks have three shades, and I read ${quoted(got)}. Name three cloths, from light to dark. For example colours:white,grey,navy.`,
  'blocks-or-side': () => 'How many blocks, or how long a side? For example blocks:100 or side:5.',
  'not-covered': () => 'I found no rows that cover that. A size a little larger or smaller?',
  'straight-with-diamonds': () =>
    'A straight edge goes with set:diamonds. With hexagons the outer notches can be filled: outer:yes.',
  'layout-shape': ({ layout, shape }) =>
    `${capital(text(layout))} is made of ${text(shape)}. Leave the shape out, or say it so.`,
  'field-of-hexagons': ({ shape, about, size }) =>
    `I fill a quilt with hexagons, not with ${text(shape)}.${about ? ` By area alone it takes about ${text(about)} of ${text(size)}, and more at the edges.` : ''}`,
  'method-not-for-shape': ({ method, shape }) =>
    `${text(shape)} are not cut by ‘${text(method)}’. Leave the method out.`,
  'nothing-to-sew': () => 'There is no seam in that: one patch alone.',
  'arrangement-unknown': ({ got, option, near: around, rows }) =>
    `${text(got)} ${option === 'stars' ? 'stars' : 'rosettes'} make no full ring. Rings are 1, 7, 19, 37 and so on (${text(around)} are near), or rows such as ${text(rows) || '6x5'}. Not joined: /plan ${option === 'stars' ? 'star' : 'rosette'} number:${text(got)}.`,
  'too-far': () => 'That ends past the year 9999. More hours a week, or fewer seams?',
  'what-to-sew': () =>
    'How many seams, or of what? For example seams:42, pieces:240, rosette:2 or field:60x72in.',
  'cloth-unread': ({ got }) =>
    `I cannot read ${quoted(got)} as cloth. For example have:3 fat quarters, 12 5in squares, 1 1/2yd.`,
  'cloth-list-empty': () => 'There is no cloth in that list. For example have:3 fat quarters, 1 1/2yd.',
  'role-unread': ({ got }) =>
    `I cannot read ${quoted(got)} as patches for a part. Say how many, and of what: need:19 centres, path 84 white.`,
  'role-list-empty': () => 'There is nothing to cut in that list. For example need:7 centres, 42 petals.',
  'what-to-cut': () => 'How many patches? For example pieces:240, rosette:2 or field:60x72in.',
  'one-of-these': ({ got }) => `Say one of them: ${text(got)}.`,
  'nothing-set': ({ example }) => `Nothing to set. For example ${text(example)}.`,
  'goods-unread': ({ got, count, known }) =>
    `${count === undefined ? 'I cannot read' : `I read ${text(count)}, but not`} ${quoted(got)}. ${near(got, known) || 'Say how many of what: 6 fat quarters florals, 60 1in hexagons blue, 2 1/2in strips x 20.'}`,
  'goods-how-many': ({ got }) => `How many ${text(got)}? The number first, for example 6 ${text(got)}.`,
  'goods-pack': ({ got }) =>
    `How many pieces are in ${quoted(got)}, and how large? For example 42 5in squares red.`,
  'goods-but-not': ({ got }) =>
    `I can look for what you would like, not leave out ${quoted(got)}. Name the colours or prints that would do, or none.`,
  'goods-count': ({ got, most }) => `${text(got)} of them? I take from 1 to ${text(most)} on one line.`,
  'goods-many': ({ got, most }) => `That is ${text(got)} lines at once. Up to ${text(most)}, please.`,
  'goods-size': ({ shape }) =>
    `How large is the ${text(shape)}, along its side? For example 60 1in ${text(shape)}s blue.`,
  'swap-none': () => 'No swap is open. An organiser opens one with `/swap open name:Stash`.',
  'swap-unknown': ({ got, known }) =>
    `I know no swap ${quoted(got)}. ${near(got, known) || (text(known) ? `There is ${text(known)}.` : 'None is open.')}`,
  'swap-closed': ({ name }) =>
    `${text(name)} takes no more offers and wishes. Ask an organiser to reopen it.`,
  'swap-not-begun': ({ name, first }) => `${text(name)} takes offers and wishes from ${text(first)} on.`,
  'swap-over': ({ name, last }) => `${text(name)} took offers and wishes until ${text(last)}.`,
  'swap-days': ({ first, last }) => `The last day, ${text(last)}, is before the first, ${text(first)}.`,
  'swap-each-of-what': () =>
    'An even swap needs both: how many each gives, and of what. For example each:4 of:5in squares.',
  'swap-name-taken': ({ got }) =>
    `There is a swap called ${quoted(got)} already. Give this one another name.`,
  'swap-is-even': ({ name }) =>
    `${text(name)} is an even swap: each gives alike to every other. \`/swap join\` takes part.`,
  'swap-is-matched': ({ name }) =>
    `${text(name)} matches offers and wishes, so it has no rounds. How many would swap evenly? For example members:12 each:10.`,
  'swap-how-many': () => 'How many swap? For example members:12 each:10.',
  'swap-names-twice': () => 'A name is there twice. Tell the two apart.',
  'swap-lines-many': ({ most }) => `That would be too many lines of yours. Up to ${text(most)} in one swap.`,
  'swap-edit-what': () =>
    'Change what? For example line:3 to:4 fat quarters florals, or, for organisers, last:2027-01-10.',
  'swap-line-to': () => 'What should the line say? One line, for example to:4 fat quarters florals.',
  'swap-no-line': ({ got }) => `There is no line ${text(got)} in this swap. \`/swap list\` has them all.`,
  'swap-no-lines': () => 'You have no line in this swap.',
  'swap-not-yours': ({ got }) => `Line ${text(got)} is somebody else’s. She can change it, or an organiser.`,
  'swap-not-in': ({ name }) => `You are not in ${text(name)}.`,
  'swap-nobody': ({ got, known }) =>
    `Nobody called ${quoted(got)} is in this swap. ${near(got, known) || `In it: ${text(known)}.`}`,
  'swap-too-few': ({ name }) => `It takes two to swap, and ${text(name)} has not two members yet.`,
  'swap-none-sent': () => 'You have nothing to send that is not sent yet.',
  'swap-none-received': () => 'Nothing is on its way to you that has not come yet.',
  'swap-no-parcel': ({ got }) => `Parcel ${text(got)} cannot be marked so. \`/swap envelopes\` has yours.`,
  'question-unread': () => 'I cannot tell what to work out from that. Three asks that I can answer:',
  ...GUILD_WORDINGS,
  'not-a-line': ({ got }) => `I cannot read this line: ${text(got).replace(/\.$/, '')}.`,
};

/** A number so large that only its power can be written. */
const huge = (got: Problem[string]): boolean => text(got).includes('e+');

const named = (option: Problem[string]): string => (option ? `${text(option)}: ` : '');

/** "Did you mean …?" where one of the known words is near enough to be meant. */
function near(got: Problem[string], known: Problem[string], sign = ''): string {
  const meant = nearestStart(text(got), list(known));
  return meant ? `Did you mean ${sign}${meant.word}?` : '';
}
