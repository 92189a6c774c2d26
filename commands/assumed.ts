/** "your " or "the guild’s " before a default that somebody has set. */
export const whose = (from: 'you' | 'guild' | 'usual'): string =>
  ({ you: 'your ', guild: 'the guild’s ', usual: '' })[from];

/** Of the assumptions, those that a member may keep her own of, and has not. */
const MAY_BE_KEPT = /^(?!your ).*\b(?:seam|usable width|stitches an inch|a week)$/;

/** What was taken for granted, in one line, and how to change what can be kept; nothing where nothing was. */
export function assumedNote(assumed: readonly string[]): string[] {
  if (assumed.length === 0) return [];
  const change = assumed.some((one) => MAY_BE_KEPT.test(one)) ? ' Yours differ? `/me set`' : '';
  return [`Assumed: ${assumed.join(', ')}.${change}`];
}
