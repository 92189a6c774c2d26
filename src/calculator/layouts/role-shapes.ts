import { FORMS, type Kind } from './forms.ts';
import type { PatchList } from './patches.ts';

/** Patches of one kind that serve one purpose. */
export interface RoleShape {
  readonly role: string;
  readonly kind: Kind;
  readonly pieces: number;
}

/** The patches of a list by what they are for and what they are, in the order in which the roles are named. */
export function roleShapes({ count, role, form, roles }: PatchList): RoleShape[] {
  const kinds = [...new Set(FORMS.map((one) => one.kind))];
  const counts = new Uint32Array(roles.length * kinds.length);
  const kindOf = FORMS.map((one) => kinds.indexOf(one.kind));
  for (let i = 0; i < count; i++) counts[role[i]! * kinds.length + kindOf[form[i]!]!]!++;
  return roles
    .flatMap((named, r) =>
      kinds.map((kind, k) => ({ role: named, kind, pieces: counts[r * kinds.length + k]! })),
    )
    .filter(({ pieces }) => pieces > 0);
}
