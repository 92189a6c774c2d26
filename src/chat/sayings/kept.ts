import { END, heard, LEAD, of, type Saying, WEEKDAY, weekdayIn } from './saying.ts';

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

const FOR_ALL = /\b(?:the (?:whole )?guild|everyone|everybody|for us all|our guild|the group)\b/i;

/** "Set my seam to 3/8": what is set, and to what. */
const SET_TO =
  /^\s*(?:please )?(?:set|change|make) (my|the guild['’]s|our) (seam(?: allowance)?|(?:cloth |fabric )?width|pace|stitches|hours) (?:to|=) (\d[^,;]*?)\s*[.!]*$/i;
const setTo = (text: string): string => {
  const [, , what = '', value = ''] = SET_TO.exec(text) ?? [];
  return `${what.toLowerCase().replace(/^(?:cloth|fabric) | allowance$/g, '')}:${value}`;
};
const ZONE = /^\s*(?:set )?(my|the guild['’]s|our) time ?zone (?:is|to) ([\p{L}_/ -]+?)\s*[.!]*$/iu;
const zoneIn = (text: string): string => `zone:${ZONE.exec(text)?.[2]?.trim().replaceAll(' ', '_')}`;
const RESET =
  /^\s*(?:please )?reset (my|the guild['’]s|our) (seam|width|unit|reading|stitches|pace|hours|zone)\b[^\p{L}]*$/iu;
const resetIn = (text: string): string => RESET.exec(text)?.[2]?.toLowerCase() ?? '';

/** A day that comes round, and nothing else that is to be remembered. */
const EVERY = `(?:every|each|on) ${WEEKDAY.source}`;
const AT = '(?: at \\d{1,2}(?:[:.]\\d{2})?(?: ?[ap]m)?)?';
const atIn = (text: string): string => {
  const at = /\bat (\d[\d:.]*(?: ?[ap]m)?)/i.exec(text)?.[1];
  return at ? ` at:${at}` : '';
};
const MAY = '(?:can you |could you |would you )?';

/** Her own, or the guild's, as she says. */
const both = (form: string, way: RegExp, words: (text: string) => string): readonly Saying[] => [
  heard(`me ${form}`, { any: [way], all: [/\bmy\b/i], words }),
  heard(`guild ${form}`, { any: [way], none: [/\bmy\b/i], words }),
];

/** What is kept of a member and of the guild. */
export const KEPT: readonly Saying[] = [
  heard('me export', {
    any: [/\bwhat do you (?:keep|know|store|remember) (?:of|about|on) me\b|\bexport my data\b/i],
  }),
  heard('me forget', { any: [/^\s*(?:please\s+)?(?:forget me|delete (?:my data|all my data|me))\b/i] }),
  heard('guild set', {
    any: [IN_UNIT],
    all: [SETTING, FOR_ALL],
    none: [/\d/, A_JOB],
    words: (text) => `unit:${unitIn(text)}`,
  }),
  heard('me set', {
    any: [IN_UNIT],
    all: [SETTING],
    none: [/\d/, A_JOB, FOR_ALL],
    words: (text) => `unit:${unitIn(text)}`,
  }),
  ...both('set', SET_TO, setTo),
  ...both('set', ZONE, zoneIn),
  ...both('reset', RESET, resetIn),
  heard('guild show', {
    any: [of(LEAD, `(?:what are|show(?: me)?) (?:the|our) guild(?:['’]s)? settings`, END)],
  }),
  heard('me show', { any: [of(LEAD, `(?:what are|show(?: me)?) my settings`, END)] }),
  heard('me set', {
    any: [of(LEAD, MAY, `remind me (?:to sew |about (?:it|the challenge) )?${EVERY}${AT}${END}`)],
    words: (text) => `nudge:${weekdayIn(text)}${atIn(text)}`,
  }),
  heard('guild set', {
    any: [
      of(
        LEAD,
        MAY,
        '(?:remind|tell|update) (?:us(?: all)?|everyone|everybody|the (?:guild|group)) (?:how (?:we are doing|far we are) )?',
        `(?:(?:every|each) ${WEEKDAY.source}|on ${WEEKDAY.source.replace('s?', 's')})${AT}${END}`,
      ),
    ],
    words: (text) => `digest:${weekdayIn(text)}${atIn(text)}`,
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
