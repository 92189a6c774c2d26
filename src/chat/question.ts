import { countedOut } from './counted-out.ts';
import type { Doubt } from './doubt.ts';
import { readGuildQuestion } from './guild-questions.ts';
import { metricSizes } from './metric-sizes.ts';
import { inFigures } from './number-words.ts';
import { plainWords } from './plain-words.ts';
import { type Beside, besidesIn } from './question-besides.ts';
import { doubtIn } from './question-doubts.ts';
import { signOf } from './question-signs.ts';
import { optionWords } from './question-words.ts';

/** What a plain question was taken to ask: a command's form, and the words its options are read from. */
export interface Question {
  readonly command: string;
  readonly form: string;
  readonly words: string;
  /** Its words hold nothing but options: what cannot be read in them is told, not passed over. */
  readonly exact?: true;
  /** Where it can be read in several ways: what to ask back. */
  readonly doubt?: Doubt;
  /** What it asks for beside that. */
  readonly besides?: readonly Beside[];
}

const HELP_WITH =
  /\bhelp (?:(?:me )?(?:with|on|about) )?(?:the )?[/!]?(cut|count|yield|yardage|template|time|finish|check|plan|kit|swap|challenge|log|standings|guild)\b/i;
const PLAN_NAMED = /\bplan (?:called |named |of )?(.+?)[\s.!?]*$/i;

const SWAPPERS =
  /\b(\d+) (?:members|people|ladies|girls|women|quilters|friends|swappers|of us)\b|\b(?:among|between|with) (\d+)\b/i;
const GIVEN_EACH = /\b(\d+) (?:\S+ ){0,3}?each\b|\beach (?:of us )?(?:gives?|swaps?|makes?|sends?) (\d+)/i;

/** Of an even swap how many take part and how many each gives; else all of it, for the names that may be in it. */
function roundsWords(question: string): string {
  const swappers = SWAPPERS.exec(question);
  if (!swappers) return optionWords('swap rounds', question);
  const rest = question.replace(swappers[0], ',');
  const each = GIVEN_EACH.exec(rest);
  return [`members:${swappers[1] ?? swappers[2]}`, ...(each ? [`each:${each[1] ?? each[2]}`] : [])].join(' ');
}

/** What the options of some forms are read from: not the whole question, but what it names. */
const NAMED: Readonly<Record<string, (question: string) => string>> = {
  help: (question) => HELP_WITH.exec(question)?.[1] ?? '',
  'swap rounds': roundsWords,
  'plan remove': (question) => `name:${PLAN_NAMED.exec(question)?.[1] ?? ''}`,
  'plan show': (question) => `name:${PLAN_NAMED.exec(question)?.[1] ?? ''}`,
};

/**
 * What a question in plain words asks for, or null where no sign of a known question is there. The words are
 * handed on whole: the options of the form meant are picked out of them, the rest passed over.
 *
 * @example
 * readQuestion('how many 1 inch hexagons from a fat quarter?').command // "yield"
 * readQuestion('queen size, 1-inch, out of my scraps').form // "make"
 * readQuestion('how much fabric for 240 hexagons').command // "yardage"
 * readQuestion('good morning all') // null
 */
export function readQuestion(text: string, slips?: Parameters<typeof plainWords>[1]): Question | null {
  const said = inFigures(plainWords(text, slips));
  const ofGuild = readGuildQuestion(said);
  if (ofGuild) return { ...ofGuild, exact: true };
  const plain = metricSizes(countedOut(said));
  const sign = signOf(plain);
  const doubt = doubtIn(sign, plain);
  if (doubt) return { ...formOf(doubt.ask), words: doubt.ways[0]?.words ?? '', doubt };
  if (sign === null) return null;
  const words = NAMED[sign]?.(plain) ?? optionWords(sign, plain);
  const besides = besidesIn(sign, plain);
  return { ...formOf(sign), words, ...(besides.length > 0 ? { besides } : {}) };
}

function formOf(ask: string): { command: string; form: string } {
  const [command = '', form = ''] = ask.split(' ');
  return { command, form };
}
