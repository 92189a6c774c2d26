/** One way to read a question: what it is called, and the words its options are read from. */
export interface Way {
  readonly label: string;
  readonly words: string;
}

/** A question that can be read in several ways, which differ too much for one to be taken: it is asked back. */
export interface Doubt {
  /** The command and its form that answers every reading. */
  readonly ask: string;
  readonly title: string;
  readonly asks: string;
  readonly ways: readonly Way[];
  /** Of each answer, the line or the row of its table that is told beside the others; its first line if not said. */
  readonly tells?: RegExp;
}
