/** Numbers, sizes and what is square, as the readers of lengths know them. */
const MEASURES: readonly (readonly [RegExp, string])[] = [
  [/(?<![\d.])\.(?=\d)/g, '0.'],
  [/(?<![\d,.])(\d{1,3}),(\d{1,2})(?=\s?(?:cm|mm|m|met\w+)\b)/gi, '$1.$2'],
  [/(\d\/\d+)(?:ths?|rds?|nds?)\b/gi, '$1'],
  [/\bfat 8ths?\b/gi, 'fat eighths'],
  [/(\d) ?(?:pcs?|pces)\b/gi, '$1 pieces'],
  [/(\d) ?wof\b/gi, '$1 wof'],
  [/(\d) ?spi\b/gi, '$1 stitches per inch'],
  [/\b(5|10)(?: ?in(?:ch)?| ?")?[- ]?sqs?\b/gi, '$1in squares'],
  [/\b(5|10) ?(?:in(?:ch)?|")[- ]squares? x ?(\d+)\b/gi, '$2 $1in squares'],
  [/\b5 ?(?:in(?:ch)?|")[- ]charm(s?)(?: squares?)?\b/gi, '5in square$1'],
  // Two lots of squares to cut from.
  [
    /\b(\d+) ?(?:inch|in|") and (\d+) ?(?:inch|in|")[- ]squares\b(?=.*\b(?:hex|diamond|triang|kite|pentag))/gi,
    '$1x$1in and $2x$2in pieces',
  ],
  // A cushion is square; other things are, where that is said.
  [
    /(?<![\d/.]|\d ?x ?|\bby )\b(\d+) ?(in(?:ch)?|"|cm)(?: ?sq(?:uare)?)?[- ](cushions?|pillows?)\b(?: covers?)?/gi,
    '$1x$1$2 $3',
  ],
  [
    /\b(cushion|pillow)(?: cover| front)?,? (?:of )?(\d{2}) ?(in(?:ch(?:es)?)?|"|cm)(?: ?sq(?:uared?)?)?(?! ?(?:x|by|[a-z]*hex))(?=\W|$)/gi,
    '$1 $2x$2$3',
  ],
  [
    /(?<![\d/.]|\d ?x ?|\bby )\b(\d+) ?(in(?:ch)?|"|cm)[- ]sq(?:uare)? (quilts?|table\s?cloths?|toppers?|throws?|mats?|hangings?|tops?)\b/gi,
    '$1x$1$2 $3',
  ],
  [
    /\b(quilt|table\s?cloth|topper|throw|mat|hanging|top)(?: is| of|,)? (\d+) ?(in(?:ch(?:es)?)?|"|cm) sq(?:uared?)?\b/gi,
    '$1 $2x$2$3',
  ],
  [/\b(?:1|an?|one|per|each) sq(?:uare)?\.? m(?:et(?:re|er))?\b/gi, '100x100cm'],
  [/\b(?:1|an?|one|per|each) sq(?:uare)?\.? y(?:ar)?d\b/gi, '36x36in'],
  [/\b(?:1|an?|one|per|each) sq(?:uare)?\.? f(?:oo)?t\b/gi, '12x12in'],
];

/**
 * A question with its measures as they are read: signs that stand for a unit or a number spelled out, and what is
 * square by both its sides.
 *
 * @example
 * plainMeasures('.75in hexies, 240pcs') // "0.75in hexies, 240 pieces"
 * plainMeasures('an 18in cushion in 1in hexies') // "an 18x18in cushion in 1in hexies"
 * plainMeasures('5 in squares x 42') // "42 5in squares"
 */
export const plainMeasures = (text: string): string =>
  MEASURES.reduce((said, [typed, read]) => said.replace(typed, read), text);
