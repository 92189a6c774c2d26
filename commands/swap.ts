import type { Command } from '../src/chat/command.ts';
import { edit, offer, want, withdraw } from './swap-lines.ts';
import { list } from './swap-list.ts';
import { match } from './swap-match.ts';
import { closeSwap, openSwap, reopenSwap } from './swap-open.ts';
import { join, leave, noShow } from './swap-part.ts';
import { envelopes, received, sent, settle } from './swap-post.ts';
import { rounds } from './swap-rounds.ts';

const swap: Command = {
  name: 'swap',
  summary: 'Swap cloth and patches: offers and wishes matched fairly, or even rounds',
  standing: 'list',
  forms: [
    list,
    openSwap,
    offer,
    want,
    edit,
    withdraw,
    match,
    envelopes,
    sent,
    received,
    settle,
    rounds,
    join,
    leave,
    noShow,
    closeSwap,
    reopenSwap,
  ],
};

export default swap;
