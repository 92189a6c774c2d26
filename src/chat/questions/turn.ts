/** Words of a question that say an option without naming it. They are taken out, and the option put in front. */
export interface Turn {
  /** The commands, with their form, of which the words are an option. */
  readonly of: RegExp;
  readonly words: RegExp;
  /** The option as it is typed, from what was found in the question; none where the words are only in the way. */
  readonly says?: (found: readonly string[], question: string) => string;
  /** Somewhere in the question this must be there too. */
  readonly where?: RegExp;
  readonly unless?: RegExp;
}
