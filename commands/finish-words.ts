import type { Here } from '../src/chat/command.ts';
import { bare, otherwise, required, usually } from '../src/chat/option.ts';
import { length, size } from '../src/chat/option-kinds.ts';
import { wrong } from '../src/measure/result.ts';
import { isInfantBed, type Size } from '../src/measure/size.ts';
import { whose } from './assumed.ts';
import { cribCaution } from './cautions.ts';

/** The quilt that is to be finished. */
export const quiltOption = bare(size('The quilt top, finished'));
export const neededQuilt = required(quiltOption);

/** What a strip, a panel or a square is cut from. */
export const usableOption = usually(
  length('Usable width of the cloth', 4, 200, '42in'),
  'what /me and /guild keep, or 42in',
);

/** More than the top on every side, for backing and batting. */
export const overOption = otherwise(length('More than the top on every side', 0, 24, '4in'), 4);

export const usableWidth = (values: { readonly width?: number }, { defaults }: Here): number =>
  values.width ?? defaults.width.value;

/** What was taken for granted of the quilt and the cloth. */
export function quiltAssumed(quilt: Size, { say }: Here): string[] {
  return quilt.bed ? [`${quilt.bed} as ${say.size(quilt.width, quilt.height)}`] : [];
}

export const widthAssumed = (width: number, { given, defaults, say }: Here): string[] =>
  given.has('width') ? [] : [`${whose(defaults.width.from)}${say.plain(width)} usable width`];

export const overAssumed = (over: number, { given, say }: Here): string[] =>
  given.has('over') ? [] : [`${say.plain(over)} over on every side`];

/** An infant's size is asked for by its name. */
export const quiltCautions = (quilt: Size): string[] => (isInfantBed(quilt.bed) ? cribCaution() : []);

/** A strip or panel that the cloth has no room for. */
export const tooWide = (what: string, size: number, usable: number, { say }: Here) =>
  wrong('wider-than-cloth', { what, size: say.plain(size), cloth: say.plain(usable) });
