import type { Command } from '../src/chat/command.ts';
import { backingForm } from './finish-backing.ts';
import { battingForm } from './finish-batting.ts';
import { bedForm } from './finish-bed.ts';
import { bindingForm } from './finish-binding.ts';
import { borderForm } from './finish-border.ts';

const finish: Command = {
  name: 'finish',
  summary: 'Backing, binding, batting, borders, and the quilt for a bed',
  forms: [backingForm, bindingForm, battingForm, borderForm, bedForm],
};

export default finish;
