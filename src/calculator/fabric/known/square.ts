/** How so many patches of side 1 lie in a small square: x, y of the centre and the turn in degrees, each. */
export interface KnownSquare {
  readonly side: number;
  readonly places: readonly (readonly [x: number, y: number, turnDegrees: number])[];
}
