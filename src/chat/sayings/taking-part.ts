import { END, heard, LEAD, NOT_SO, namedIn, of, type Saying } from './saying.ts';

const MAY =
  "(?:(?:can|may|could) (?:i|you) (?:still )?|i(?:['’]d| would)? (?:(?:really )?(?:like|love|want|have|need)) to |i(?:['’]ll| will) |i wanna |let me )?";
const THE = '(?:the|this|our|your) ';
/** The challenge, perhaps with its name before it. */
const CHALLENGE = `${THE}(?:[\\p{L}\\d’'-]+ ){0,3}?challenge`;
const SWAP = `${THE}(?:[\\p{L}\\d’'-]+ ){0,2}?swap`;

/** What of it is joined or left: nothing behind it but the thing itself. */
const joining = (what: string): readonly RegExp[] => [
  of(LEAD, MAY, `(?:join|take part in|be (?:a )?part of|be in|join in(?: with| on)?) ${what}`, END),
  of(LEAD, MAY, `(?:sign me up|count me in|add me|put me (?:down|in)) (?:for|to|in|on) ${what}`, END),
  of(LEAD, `i(?:['’]m| am) in(?: for| on)? ${what}`, END),
];

/** Nothing is named that is joined. */
const JOIN_ALONE: readonly RegExp[] = [
  of(LEAD, MAY, '(?:join(?: in)?|take part|be (?:a )?part of it)', END),
  of(LEAD, MAY, '(?:sign me up|count me in|add me(?: in)?|put me (?:down|in))', END),
  of(LEAD, "i(?:['’]m| am) in", END),
];

/** Behind it she may say why. */
const AND_WHY = '(?:\\s*[.!?]*\\s*$|\\s*[,.!]\\s*(?!\\d).*|\\s+(?:please|now)\\b.*)$';
const leaving = (what: string): readonly RegExp[] => [
  of(LEAD, MAY, `(?:leave|drop out of|withdraw from|quit|pull out of) ${what}`, AND_WHY),
  of(LEAD, '(?:can you |could you )?', `take me (?:out of|off) ${what}`, AND_WHY),
];

/** Whoever asks whether she may leave is told how, and has not left. */
const LEAVING_ASKED: readonly Saying[] = (
  [
    ['swap', SWAP],
    ['challenge', CHALLENGE],
  ] as const
).map(([topic, what]) => heard('help', { any: leaving(what), all: [/\?/], words: () => topic }));

/** "Join Winter": a name is told from cloth by its capital. */
const NAMED =
  /^\s*(?:[Cc]an I |I(?:['’]d like| want) to |I(?:['’]ll| will) )?[Jj]oin (?<name>(?!The |This |Our |Me |In )\p{Lu}[\p{L}\d’'-]*(?: [\p{L}\d’'-]+)?)\s*[.!?]*$/u;

const challenge = (text: string): string => namedIn(text, 'challenge');
const swap = (text: string): string => namedIn(text, 'swap');

/** She takes part, or does so no more. */
export const TAKING_PART: readonly Saying[] = [
  ...LEAVING_ASKED,
  heard('swap leave', { any: leaving(SWAP), none: [NOT_SO], words: swap }),
  heard('challenge leave', { any: leaving(CHALLENGE), none: [NOT_SO], words: challenge }),
  heard('swap join', { any: joining(SWAP), none: [NOT_SO], words: swap }),
  heard('challenge join', {
    any: [...joining(CHALLENGE), ...JOIN_ALONE],
    none: [NOT_SO],
    words: challenge,
  }),
  heard('challenge join', {
    any: [NAMED],
    none: [NOT_SO],
    words: (text) => NAMED.exec(text)?.groups?.name ?? '',
  }),
];
