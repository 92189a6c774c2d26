import { END, heard, LEAD, type Saying, WEEKDAY, weekdayIn } from './saying.ts';

/** What she wants her answers in. */
const SETTING =
  /\b(?:set|use|using|switch|change|answer|show|speak|tell me|work)\b|\bplease\b|\bprefer\b|\bi(?:'m| am) in\b/i;
const IN_UNIT = /\b(cm|centimet\w+|mm|millimet\w+|metric|inch(?:es)?|imperial)\b/i;

function unitIn(text: string): string {
  const said = IN_UNIT.exec(text)?.[1] ?? '';
  return /^mm|^milli/i.test(said) ? 'mm' : /^inch|^imp/i.test(said) ? 'in' : 'cm';
}

/** With one of these it is a question about the work, asked in that unit. */
const A_JOB =
  /\b(?:how|what|hex\w*|diamonds?|triangles?|quilts?|fabric|cloth|rosettes?|flowers?|stars?|papers?|templates?|backing|binding|borders?|plan)\b/i;

/** A day that comes round, and nothing else that is to be remembered. */
const EVERY = `(?:every|each|on) ${WEEKDAY.source}`;
const MAY = '(?:can you |could you |would you )?';

const of = (...parts: readonly string[]): RegExp => new RegExp(parts.join(''), 'i');

/** What is kept of a member and of the guild. */
export const KEPT: readonly Saying[] = [
  heard('me export', {
    any: [/\bwhat do you (?:keep|know|store|remember) (?:of|about|on) me\b|\bexport my data\b/i],
  }),
  heard('me forget', { any: [/^\s*(?:please\s+)?(?:forget me|delete (?:my data|all my data|me))\b/i] }),
  heard('me set', {
    any: [IN_UNIT],
    all: [SETTING],
    none: [/\d/, A_JOB],
    words: (text) => `unit:${unitIn(text)}`,
  }),
  heard('me set', {
    any: [of(LEAD, MAY, `remind me (?:to sew |about (?:it|the challenge) )?${EVERY}${END}`)],
    words: (text) => `nudge:${weekdayIn(text)}`,
  }),
  heard('guild set', {
    any: [
      of(
        LEAD,
        MAY,
        '(?:remind|tell|update) (?:us(?: all)?|everyone|everybody|the (?:guild|group)) (?:how (?:we are doing|far we are) )?',
        `(?:(?:every|each) ${WEEKDAY.source}|on ${WEEKDAY.source.replace('s?', 's')})${END}`,
      ),
    ],
    words: (text) => `digest:${weekdayIn(text)}`,
  }),
  heard('me set', {
    any: [
      of(LEAD, MAY, `(?:stop (?:reminding me|(?:my|the) reminders?)|no more remind(?:ers|ing)(?: me)?)`, END),
      of(LEAD, MAY, `(?:turn|switch) (?:off (?:my|the) reminders?|(?:my|the) reminders? off)`, END),
      of(LEAD, `(?:do not|don['’]?t) remind me(?: any ?more)?`, END),
    ],
    words: () => 'nudge:off',
  }),
];
