/** What the person at the shell may type after a verb. */
interface VerbHelp {
  readonly summary: string;
  /** What stands after the verb, as it is typed. */
  readonly typed: string;
  readonly flags: Readonly<Record<string, string>>;
}

const DATA = {
  '--data FILE': 'which database; the settings name the usual one',
  '--config FILE': 'which settings; config.json beside package.json otherwise',
} as const;

const VERBS: Readonly<Record<string, VerbHelp>> = {
  start: {
    summary: 'Starts each platform that the settings name, and the room at this terminal.',
    typed: 'npm start',
    flags: DATA,
  },
  ask: {
    summary: 'Answers one ask, or with - one a line from standard input.',
    typed: "npm run -s ask -- '/cut hexagon 1in'",
    flags: {
      '--json': 'prints the reply as a document for other programs',
      '--as NAME': 'who asks; you, an organiser, when nobody is named',
      '--organiser': 'she is an organiser',
      '--place NAME': 'the room or channel; home otherwise',
      '--now TIME': 'fixes the clock, such as 2026-12-01T10:00:00Z',
      '--pictures DIR': 'draws the reply’s pictures and writes its files there',
      ...DATA,
    },
  },
  export: {
    summary: 'Writes a challenge’s whole book, however long, to a file or to standard output.',
    typed: 'npm run -s export -- --challenge Spring --out spring.csv',
    flags: {
      '--challenge NAME': 'which one, by name or number',
      '--guild ID': 'of which guild; the one at this terminal otherwise',
      '--format csv|json': 'csv otherwise',
      '--out FILE': 'standard output otherwise',
      ...DATA,
    },
  },
  check: {
    summary: 'Looks at settings, secrets, versions, the database, the last backup and whether a bot runs.',
    typed: 'npm run check',
    flags: DATA,
  },
  backup: {
    summary: 'Makes a checked copy of the database, beside a running bot.',
    typed: 'npm run backup -- /media/stick',
    flags: DATA,
  },
  restore: {
    summary: 'Checks a backup and puts it in place; what was there is kept aside.',
    typed: 'npm run restore -- FILE',
    flags: DATA,
  },
  invite: {
    summary: 'Prints the link by which the Discord bot is invited.',
    typed: 'npm run -s invite',
    flags: DATA,
  },
};

const ASKING: ReadonlySet<string> = new Set(['--help', '-h']);

/** Whether a verb's help is asked for, before anything that is an ask's own words. */
export const asksForHelp = (args: readonly string[]): boolean => {
  const end = args.indexOf('--');
  return (end < 0 ? args : args.slice(0, end)).some((arg) => ASKING.has(arg));
};

/** Help with one verb, or with all of them. */
export function helpWith(verb: string): string {
  const known = Object.hasOwn(VERBS, verb) ? VERBS[verb] : undefined;
  return known ? one(known) : all();
}

function one({ summary, typed, flags }: VerbHelp): string {
  const widest = Math.max(...Object.keys(flags).map((flag) => flag.length));
  const lines = Object.entries(flags).map(([flag, words]) => `  ${flag.padEnd(widest)}  ${words}`);
  return [summary, '', `  ${typed}`, '', ...lines, ''].join('\n');
}

function all(): string {
  const lines = Object.entries(VERBS).map(([verb, { summary }]) => `  ${verb.padEnd(8)}  ${summary}`);
  return [
    'Honeycount, a guild’s calculator for hand-pieced hexagons and diamonds.',
    '',
    ...lines,
    '',
    'A verb with --help says more. `npm run -s ask -- /help` shows what can be asked.',
    '',
  ].join('\n');
}
