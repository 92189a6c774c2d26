import { APART, IN_ROWS, LOOSE_STARS, NO_FULL_RING } from '../question-patterns.ts';
import type { Turn } from './turn.ts';

const GARDEN = /^(?:count garden|plan make|kit)$/;
const ROWS = new RegExp(IN_ROWS, 'i');
const STAR = /\bstars?\b/i;

/** How rosettes and stars are set, and what lies between. */
export const GARDEN_TURNS: readonly Turn[] = [
  {
    of: /^(?:plan make|kit)$/,
    words: /\b(\d+) (?:separate |loose )?(?:rosettes|flowers)\b/i,
    where: APART,
    says: ([, n]) => `layout:rosette number:${n}`,
  },
  {
    of: /^(?:plan make|kit)$/,
    words: /\b(\d+) rows of (\d+)\b/i,
    says: ([, rows, each]) => `rosettes:${rows}x${each} layout:garden`,
  },
  {
    of: /^count garden$/,
    words: /\b(\d+)(?![- ]rounds?) (?=(?:\d+[- ]rounds? )?(?:[a-z]+ )?(?:rosettes|flowers)\b)/i,
    unless: ROWS,
    says: ([, n]) => `rosettes:${n}`,
  },
  {
    of: /^count garden$/,
    words: /\b(\d+) rows of (\d+)\b/i,
    says: ([, rows, each]) => `rosettes:${rows}x${each}`,
  },
  { of: GARDEN, words: /\b(\d+)[- ]rounds?\b(?: each)?/i, says: ([, n]) => `rounds:${n}` },
  { of: GARDEN, words: /\b(?:no|without(?: an?)?|without any) paths?\b/i, says: () => 'path:none' },
  {
    of: GARDEN,
    words: /\b(?:double|own|separate|two) paths?\b|\bpath (?:each|of (?:their|its) own)\b/i,
    says: () => 'path:own',
  },
  {
    of: GARDEN,
    words:
      /\b(?:set |joined )?(?:with |by )?diamonds? (?:(?:in )?between|path)(?: (?:them|each|the (?:rosettes|flowers)))?\b|\b(?:set|joined) (?:with|by) diamonds\b|\bdiamonds (?:to|that|which)? ?join(?:ing)?\b/i,
    where: /\brosettes?\b|\bflowers?\b/i,
    says: () => 'path:diamonds',
  },
  {
    of: GARDEN,
    words:
      /\b(?:(?:path|all) )?(?:a?round|on) the outside\b|\bouter path\b|\b(?<=paths? )(?:all )?a?round\b(?! (?:each|every|the (?:rosettes|flowers)))/i,
    says: () => 'outer:yes',
  },
  {
    of: /^(?:plan make|kit)$/,
    words: LOOSE_STARS,
    says: ([, n]) => `layout:star number:${n}`,
  },
  // So many as make no full ring are told so, and not taken for a size.
  {
    of: /^(?:plan make|kit)$/,
    words: new RegExp(`${NO_FULL_RING}(?! rounds?) (?:[a-z]+ )?(?:rosettes|flowers)\\b`, 'i'),
    where: /\bpaths?\b|\bgardens?\b|\bjoined\b|\bbetween\b/i,
    unless: ROWS,
    says: ([, n]) => `rosettes:${n}`,
  },
  // One rosette is no garden.
  {
    of: /^(?:plan make|kit)$/,
    words: /\b1 (?=(?:rosette|flower)\b(?! garden))/i,
    says: () => 'layout:rosette',
  },
  // "A star quilt, how many stars" is of several.
  {
    of: /^(?:plan make|kit)$/,
    words: /\bstar(?= quilts?\b)/i,
    where: /\bstars\b/i,
    says: () => 'layout:stars',
  },
  {
    of: /^(?:plan make|kit|count stars)$/,
    words:
      /\b(?:set )?(?:with )?(hexagons|hexies|diamonds) (?:in )?between\b|\bset with (hexagons|hexies|diamonds)\b/i,
    where: STAR,
    says: ([, one, other]) => `set:${/^hex/i.test(one ?? other ?? '') ? 'hexagons' : 'diamonds'}`,
  },
  {
    of: /^count stars$/,
    words:
      /\b(?:made|complet\w*|filled|built|turned) (?:in)?to (?:make )?an? (?:big |large |whole )?hexagon\b|\bstraight edges?\b|\bcompleted?\b/i,
    says: () => 'outer:straight',
  },
  {
    of: /^count diamonds$/,
    words:
      /\b([14])[- ](?:diamond )?cent(?:re|er)\b|\bcent(?:re|er) of ([14])\b|\b([14]) in the (?:middle|cent(?:re|er))\b/i,
    says: ([, one, other, third]) => `from:${one ?? other ?? third}`,
  },
];
