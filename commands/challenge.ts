import type { Command } from '../src/chat/command.ts';
import { closeForm, openForm, reopenForm } from './challenge-arrange.ts';
import { editForm } from './challenge-edit.ts';
import { exportForm } from './challenge-export.ts';
import { historyForm, joinForm, leaveForm, listForm, showForm } from './challenge-look.ts';

const challenge: Command = {
  name: 'challenge',
  summary: 'What the guild sews together: open, join, look, close',
  forms: [
    openForm,
    joinForm,
    leaveForm,
    showForm,
    listForm,
    closeForm,
    reopenForm,
    editForm,
    historyForm,
    exportForm,
  ],
  standing: 'show',
};

export default challenge;
