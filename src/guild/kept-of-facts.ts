/** The rows of one table that are a member's or name her. */
export interface KeptRows {
  readonly table: string;
  /** What each column holds, in words she can read. */
  readonly columns: Readonly<Record<string, string>>;
  readonly rows: readonly Readonly<Record<string, unknown>>[];
}

/** What forgetting a member did. */
export interface Forgotten {
  /** Rows that are gone. */
  readonly gone: number;
  /** Rows that stay as nobody's, so that what they add up to stays true. */
  readonly nobodys: number;
}

/** All that is kept of a member, in every guild: it is hers wherever it is. */
export interface KeptOf {
  /** Everything; tables without a row of hers are left out. */
  read(member: string): Promise<readonly KeptRows[]>;
  /** Removes her name, words and settings, from the file too once the work is done. */
  forget(member: string): Promise<Forgotten>;
}

declare module '../chat/facts.ts' {
  interface Facts {
    readonly keptOf: KeptOf;
  }
}
