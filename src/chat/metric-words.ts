/** Sizes in centimetres or millimetres, and none in inches: bare numbers are so too. */
export const isMetric = (question: string): boolean =>
  /\d ?(?:cm|mm)\b|\bmet(?:re|er)s?\b|\d ?m\b/i.test(question) && !/\d ?(?:in\b|inch|")/i.test(question);
