import { isCribSize, MATTRESSES, quiltForBed } from '../src/calculator/finishing/bed.ts';
import { form, type Here } from '../src/chat/command.ts';
import { bare, type Option, otherwise } from '../src/chat/option.ts';
import { choice, length, size, writeSize } from '../src/chat/option-kinds.ts';
import { inches, reply } from '../src/chat/reply.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import type { Size } from '../src/measure/size.ts';
import { assumedNote } from './assumed.ts';
import { cribCaution } from './cautions.ts';

/** Width × length in figures; a bed's name here would be its quilt, not its mattress. */
const mattressSize: Option<Size, false> = {
  ...size('The mattress, width x length', '60x80in'),
  known: [],
  take(text, context) {
    return /^[a-z]/i.test(text) ? null : size('').take(text, context);
  },
};

const bedChoice = choice('The bed by its name', [
  { name: 'twin', title: 'twin', words: ['single'] },
  { name: 'twin-long', title: 'long twin', words: ['long twin', 'twin xl', 'extra-long twin'] },
  { name: 'full', title: 'full', words: ['double'] },
  { name: 'queen', title: 'queen' },
  { name: 'king', title: 'king' },
  { name: 'western-king', title: 'western king', words: ['california king', 'cal king'] },
  { name: 'crib', title: 'crib', words: ['cot', 'baby', 'infant'] },
]);

/** Where nothing is said, inches: common practice, no source. */
const USUAL_DROP = 12;

export const bedForm = form({
  name: 'bed',
  summary: 'The quilt for a bed, from its mattress, the drop and the pillow tuck',
  examples: [
    '/finish bed queen drop:12in',
    '/finish bed king drop:16in tuck:12in',
    '/finish bed mattress:140x200cm drop:30cm',
  ],
  options: {
    bed: bare(bedChoice),
    mattress: bare(mattressSize),
    drop: length('How far it hangs down at the sides and the foot', 0, 60, '12in'),
    tuck: otherwise(length('What goes under and over the pillows', 0, 40, '12in'), 0),
  },
  run(values, here) {
    const found = mattressOf(values);
    if (!found.ok) return found;
    const { name, width, length: long, infant } = found.value;
    const drop = values.drop ?? (infant ? 0 : USUAL_DROP);
    const quilt = quiltForBed({ width, length: long, drop, tuck: values.tuck });
    const { say } = here;
    // An infant's bed keeps its name, for the caution that goes with it.
    const sized = `${infant ? 'crib ' : ''}${writeSize(quilt.width, quilt.length)}`;
    return reply({
      title: `Quilt ${infant && name ? '' : 'for '}${bedWords(found.value, here)}`,
      lines: [
        `${say.size(quilt.width, quilt.length)}.`,
        ...(name ? [`${makersWords(found.value, here)}; measure your own, makers differ.`] : []),
        ...dropWords(drop, values.tuck, here),
      ],
      figures: {
        width: inches(quilt.width),
        length: inches(quilt.length),
        mattressWidth: inches(width),
        mattressLength: inches(long),
      },
      notes: assumedNote([
        ...(values.drop === undefined ? [drop === 0 ? 'no drop' : `a drop of ${say.plain(drop)}`] : []),
        ...(here.given.has('tuck') ? [] : ['no pillow tuck']),
      ]),
      cautions: infant ? cribCaution() : [],
      choices: [
        { label: `Fill it with hexagons, ${say.plain(1)} side`, ask: `/count field quilt:${sized} size:1in` },
        { label: 'Its backing', ask: `/finish backing quilt:${sized}` },
      ],
    });
  },
});

interface Found {
  readonly name: string | null;
  readonly width: number;
  readonly length: number;
  readonly infant: boolean;
}

function mattressOf({ bed, mattress }: { bed?: string; mattress?: Size }): Result<Found> {
  if (bed !== undefined && mattress) return wrong('one-of-these', { got: 'bed, mattress' });
  if (mattress) {
    const { width, height } = mattress;
    return ok({ name: null, width, length: height, infant: isCribSize(width, height) });
  }
  const known = MATTRESSES.find((one) => one.name === bed);
  if (!known) return wrong('bed-or-mattress');
  return ok({ ...known, infant: known.infant === true });
}

function bedWords({ name, width, length: long, infant }: Found, { say }: Here): string {
  if (!name) return `a mattress of ${say.size(width, long)}`;
  return infant ? 'the size of a crib' : `a ${name.replace('-', ' ')} bed`;
}

/** A crib's own measure is that of its inside. */
const makersWords = ({ width, length: long, infant }: Found, { say }: Here): string =>
  infant ? `A full-size crib is ${say.size(width, long)} inside` : `The mattress is ${say.size(width, long)}`;

function dropWords(drop: number, tuck: number, { say }: Here): string[] {
  const hangs = drop === 0 ? [] : [`${say.plain(drop)} hangs down at both sides and the foot`];
  const under = tuck === 0 ? [] : [`${say.plain(tuck)} is for the pillows`];
  return hangs.length + under.length === 0 ? [] : [`${[...hangs, ...under].join('; ')}.`];
}
