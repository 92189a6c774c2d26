import type { Problem } from '../measure/result.ts';

const text = (value: Problem[string]): string =>
  Array.isArray(value) ? value.join(', ') : String(value ?? '');

/** The sentence for each thing that can be wrong with what a guild does together. */
export const GUILD_WORDINGS: Readonly<Record<string, (problem: Problem) => string>> = {
  'hours-all-day': ({ got }) =>
    `From ${text(got)} to ${text(got)} is no stretch of hours. For example quiet:21:00-8:00, or quiet:off.`,
  'none-open': ({ what }) => `No ${text(what)} is open. An organiser opens one:`,
  'none-yet': ({ what }) => `There has been no ${text(what)} yet. An organiser opens one:`,
  'none-closed': ({ what }) => `No ${text(what)} is closed, so there is none to reopen.`,
  'together-unknown': ({ got, what, known }) =>
    `I know no ${text(what)} ‘${text(got)}’. ${text(known) ? `There is ${text(known)}. ` : ''}\`/${text(what)} list\` shows all.`,
  'together-closed': ({ name }) => `${text(name)} is closed. An organiser can reopen it.`,
  'together-open': ({ name }) => `${text(name)} is open already.`,
  'challenge-not-begun': ({ name, first }) =>
    `${text(name)} begins on ${text(first)}. Nothing is logged before.`,
  'challenge-over': ({ name, last, example }) =>
    `${text(name)} ended on ${text(last)}. Sewn before then? Say the day, for example ${text(example)}.`,
  'name-taken': ({ name, number }) => `${text(name)} is open already, as no. ${text(number)}. Another name?`,
  'days-backward': ({ first, last }) => `The first day, ${text(first)}, is after the last, ${text(last)}.`,
  'days-too-far': ({ most }) => `That is longer than ${text(most)} years. Nearer days, please.`,
  'logs-outside': ({ day }) => `There is something logged on ${text(day)}, outside of those days.`,
  'counting-fixed': () =>
    'What is counted stays as it is once something is logged. Open another challenge for something else.',
  'nothing-to-change': ({ example }) => `Nothing to change is named. For example ${text(example)}.`,
  'day-ahead': ({ day }) => `${text(day)} is still to come. Log it when it is sewn.`,
  'day-outside': ({ day, days, name }) => `${text(day)} is outside of ${text(name)}: ${text(days)}.`,
  'other-unit': ({ name, counts, got }) =>
    `${text(name)} counts ${text(counts)}, and you say ${text(got)}. How many ${text(counts)} are done?`,
  'none-counts': ({ got }) => `None of the open challenges counts ${text(got)}.`,
  'day-vague': ({ got, example }) => `‘${text(got)}’ is no one day. Which day? For example ${text(example)}.`,
  'own-log-only': ({ got, pieces }) =>
    `A log counts for whoever types it: ${text(got)} types \`/log ${text(pieces)}\` herself.`,
  'joined-only': ({ name }) =>
    `${text(name)} counts for those who have joined. \`/challenge join\` first, then log.`,
  'line-unknown': ({ line, name }) =>
    `${text(name)} has no log no. ${text(line)}. \`/challenge history\` shows its book.`,
  'line-not-hers': ({ whose }) =>
    `Only ${text(whose)} or an organiser takes ${text(whose)}’s logs back. Your own last one: \`/undo\`.`,
  'nothing-of-hers': ({ whose, name }) => `${text(name)} has no log of ${text(whose)} that stands.`,
  'nothing-logged-then': ({ day }) => `You have nothing logged for ${text(day)} that could be taken back.`,
  'line-gone': ({ line, by }) => `No. ${text(line)} was taken back already, by no. ${text(by)}.`,
  'line-not-yours': ({ line }) => `No. ${text(line)} is somebody else’s. She or an organiser can change it.`,
  'book-long': ({ lines, most }) =>
    `That book has ${text(lines)} lines; I send up to ${text(most)}. Whoever keeps me running writes it to a file:`,
  'more-parts-than-patches': ({ patches, parts }) =>
    `That has ${text(patches)} patches, too few for ${text(parts)} blocks. Fewer parts?`,
  'more-parts-than-blocks': ({ blocks, parts }) =>
    `That is ${text(blocks)} blocks, too few for ${text(parts)} shares. Fewer parts, or more blocks?`,
  'what-to-share': () =>
    'What is shared out? For example field:60x72in, rosettes:7 rounds:2, or list:rosette 3 x4, star 4 x2.',
  'list-unread': ({ got }) =>
    `I cannot read ‘${text(got)}’ in the list. For example list:rosette 3 x4, star 4 x2, block x10.`,
  'block-unknown': ({ got, name, most }) =>
    `${text(name)} has no block ${text(got)}. It has blocks 1 to ${text(most)}.`,
  'block-not-open': ({ block, opens }) => `Block ${text(block)} opens on ${text(opens)}.`,
  'month-unread': ({ got }) => `I cannot read the month ‘${text(got)}’. For example 2027-02, or February.`,
  'nothing-logged': () => 'You have nothing logged that could be taken back.',
  'not-joined': ({ name }) => `You are not in ${text(name)}.`,
  'guild-organisers-only': ({ what }) =>
    `${text(what)} is for the guild’s organisers. Ask one of them to do it.`,
};
