import { countIn, NUMBER, PATCHES, UNIT } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

/** A row that was measured: how many patches it has, and what it measures. */
export const ROW_TURNS: readonly Turn[] = [
  // A row that was measured.
  { of: /^check$/, words: new RegExp(`\\bshould(?: have)? (?:be|been|measured?) ${NUMBER}${UNIT}?`, 'i') },
  {
    of: /^check$/,
    words: /\b(\d+)[- ](?=(?:hexie|hexagon|diamond|patch|piece) row\b)/i,
    says: ([, n]) => `row:${n}`,
  },
  // By how much it came out wrong.
  {
    of: /^check$/,
    words: new RegExp(`\\b(?:too )?(short|small|long|large|big) by (?:about )?(${NUMBER}${UNIT})`, 'i'),
    says: ([, how = '', size]) => `${/^(?:short|small)/i.test(how) ? 'short' : 'over'}:${size}`,
  },
  {
    of: /^check$/,
    words: new RegExp(
      `(?:\\b(?:came|comes?|coming|turn\\w*) out |\\b(?:is|are|was|were|by) )?(?:all |about |only |just )*\\b(${NUMBER}${UNIT})(?: too)? (short|(?<=too )(?:small|narrow|long|large|big|wide))\\b`,
      'i',
    ),
    says: ([, size, how = '']) => `${/^(?:short|small|narrow)/i.test(how) ? 'short' : 'over'}:${size}`,
  },
  { of: /^check$/, words: /\brows? of (\d+)\b/i, says: ([, n]) => `row:${n}` },
  // "Comes out too long, 35 1/2": what it came to stands behind how it came out.
  {
    of: /^check$/,
    words: new RegExp(
      `\\b(?:comes?|coming|came|turn\\w*) out (?:all |much |a bit |a little |far |too )*(?:small|short|big|large|long|wide)[ ,:=-]+(?:at |it is |is |it's )?(${NUMBER}${UNIT}?)(?=[,.!?]|\\s*$)`,
      'i',
    ),
    says: ([, size]) => `measured:${size}`,
  },
  { of: /^check$/, words: new RegExp(`= ?(${NUMBER}${UNIT}?)`, 'i'), says: ([, size]) => `measured:${size}` },
  {
    of: /^check$/,
    words: countIn,
    unless: /\b\d+(?: [a-z]+){0,2} in (?:a|the|one|each|my) row\b/i,
    says: ([, n, other]) => `row:${n ?? other}`,
  },
  {
    of: /^check$/,
    words: new RegExp(`\\b(?:got|get) (?:only |just )?(${NUMBER}${UNIT}?)(?! ?[a-z])`, 'i'),
    says: ([, size]) => `measured:${size}`,
  },
  // "Row 15 hexies 1in 26.5": last of all what it came to.
  {
    of: /^check$/,
    words: new RegExp(`(?<=${NUMBER}${UNIT}[ ,=]+)(${NUMBER}${UNIT}?)(?=[ .!?]*$)`, 'i'),
    where: /\brow\b/i,
    says: ([, size]) => `measured:${size}`,
  },
  {
    of: /^check$/,
    words: new RegExp(`(?<=${PATCHES})[ ,:=-]+(${NUMBER}${UNIT}?)(?=[ ,.!?]|$)`, 'i'),
    unless:
      /\b(?:out|measures?|measured|measuring|is|are|was|were)\b[a-z ]*\d|\bhow (?:long|wide|big)\b|\bwhat should\b/i,
    says: ([, size]) => `measured:${size}`,
  },
];
