/** A column of a printed table. */
export interface SheetColumn {
  readonly title: string;
  /** Its part of the width, beside the other columns' parts. */
  readonly share: number;
  readonly right?: boolean;
  /** An empty box to tick in every row, in place of words. */
  readonly box?: boolean;
  /** A line to write on, in place of words. */
  readonly line?: boolean;
}

export interface SheetSection {
  readonly title: string;
  readonly columns: readonly SheetColumn[];
  /** A box to tick before each row. */
  readonly boxes: boolean;
  readonly rows: readonly (readonly string[])[];
  /** A last row, set off; it has no box. */
  readonly total?: readonly string[];
}

/** A printed checklist: headings, lines, tables with boxes to tick, notes. */
export interface PlanSheetRecipe {
  readonly draw: 'plan-sheet';
  readonly sheet: 'letter' | 'a4';
  readonly title: string;
  readonly under: string;
  readonly lines: readonly string[];
  readonly sections: readonly SheetSection[];
  readonly notes: readonly string[];
  /** At the foot of every page, before the page's number. */
  readonly foot: string;
}
