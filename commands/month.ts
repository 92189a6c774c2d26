import type { Command } from '../src/chat/command.ts';
import { closeMonthForm, openMonthForm, reopenMonthForm } from './month-arrange.ts';
import { blockForm, doneForm, undoneForm } from './month-block.ts';
import { listMonthsForm, showMonthForm } from './month-look.ts';
import { viewForm } from './month-view.ts';

const month: Command = {
  name: 'month',
  summary: 'Block of the month: equal shares of sewing, each with its day, cut list and cloth',
  forms: [
    openMonthForm,
    showMonthForm,
    blockForm,
    doneForm,
    undoneForm,
    viewForm,
    listMonthsForm,
    closeMonthForm,
    reopenMonthForm,
  ],
  standing: 'show',
};

export default month;
