import { type Reply, reply } from '../../chat/reply.ts';

/** A button of long ago, or none of ours. */
export const gone = (): Reply =>
  reply({
    title: 'Too old',
    lines: ['That button is too old: I no longer have what it stood for. Ask again, please.'],
    audience: 'asker',
    error: { code: 'button-gone', message: 'That button is too old. Ask again.' },
  });

/** A button that answers somebody else; `ask` is what it stands for, where that can be typed. */
export const notYours = (ask: string | null): Reply =>
  reply({
    title: 'Somebody else’s',
    lines: [
      'That button answers the member who asked.',
      ...(ask ? ['You can ask it too:', `\`${ask}\``] : []),
    ],
    audience: 'asker',
    error: { code: 'button-not-yours', message: 'That button answers the member who asked.' },
  });

/** Said in a place where the answer itself may not stand, to one who takes no messages from the bot. */
export const NO_MESSAGES =
  'That answer is for you alone, and you take no messages from me. Ask it with the slash command.';

/** Something of ours went wrong when it may have been done already. */
export const lost = (reference: string): Reply =>
  reply({
    title: 'My fault',
    lines: [
      'That went wrong on my side, not yours. It may be done all the same: look before you ask again.',
      `Tell an organiser: reference ${reference}.`,
    ],
    audience: 'asker',
    error: { code: 'fault', message: `That went wrong on my side: reference ${reference}.` },
  });

/** Under an answer that is whole but for what could not be made. */
export const incomplete = (reference: string): string =>
  `A picture or a button is missing here, for a cause of mine: reference ${reference}.`;

/** Of a file that the platform has no room for. */
export const tooLarge = (name: string): string =>
  `${name} is more than may be sent here. Ask for less at once, or ask at the terminal.`;
