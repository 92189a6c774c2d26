import { byCloth } from './by-cloth.ts';
import type { Layout } from './layout.ts';
import type { PatchList } from './patches.ts';
import { rosetteTotal } from './rosette.ts';

/** Which round or row a patch is of, from 0; null where it is of none, as a path's. */
type PlaceOf = (patch: number) => number | null;

/** Each role is a round. */
const byRole =
  ({ role }: PatchList): PlaceOf =>
  (i) =>
    role[i]!;

/** A row of hexagons is three half edges from the next, on the line u + 2v. */
const byLine =
  ({ u, v }: PatchList): PlaceOf =>
  (i) =>
    (u[i]! + 2 * v[i]!) / 3;

const PETAL = 1;

/** A garden's rosettes come one after another, each from its centre outward; what lies between them is of no round. */
function inRosettes({ role, part, count }: PatchList): PlaceOf {
  let size = 0;
  while (size < count && part[size] === part[0] && role[size]! <= PETAL) size++;
  let rounds = 0;
  while (rosetteTotal(rounds) < size) rounds++;
  const roundOf = Array.from({ length: size }, (_, k) => {
    let round = 0;
    while (rosetteTotal(round) <= k) round++;
    return round;
  });
  return (i) => (role[i]! <= PETAL ? roundOf[i % size]! : null);
}

/** Several stars take the cloths in turn; what is set between them is of none. */
const byStar =
  ({ role, part }: PatchList): PlaceOf =>
  (i) =>
    role[i] === 0 ? part[i]! - 1 : null;

/** The shades of a block, from light to dark; as roles medium comes last. */
const SHADE_OF_ROLE = [0, 2, 1];
const byShade =
  ({ role }: PatchList): PlaceOf =>
  (i) =>
    SHADE_OF_ROLE[role[i]!]!;

const PLACES: Readonly<Record<string, (list: PatchList) => PlaceOf>> = {
  rosette: byRole,
  star: byRole,
  diamonds: byRole,
  field: byLine,
  garden: inRosettes,
  'garden with diamonds': inRosettes,
  stars: byStar,
  blocks: byShade,
  'blocks apart': byShade,
  'blocks over': byShade,
};

/**
 * A layout with the cloths for its roles: its rounds (of a field its rows, of several stars the stars) take the
 * cloths in turn, and the list is begun again when it ends; of blocks three cloths are light, medium and dark.
 * What is of no round keeps its role.
 */
export function inCloths<L extends Layout>(layout: L, cloths: readonly string[]): L {
  const { patches } = layout;
  const placeOf = PLACES[layout.name]?.(patches);
  if (placeOf === undefined) return layout;
  const names = byCloth([], cloths).map(({ name }) => name);
  const turns = cloths.map((name) => names.indexOf(name));
  // A cloth may be called as a role is; the role then says that it is none of the cloths.
  const roles = [...names, ...patches.roles.map((one) => (names.includes(one) ? `${one}, no cloth` : one))];
  const role = Uint16Array.from({ length: patches.count }, (_, i) => {
    const place = placeOf(i);
    return place === null ? names.length + patches.role[i]! : turns[place % turns.length]!;
  });
  return { ...layout, patches: { ...patches, role, roles } };
}
