import type { Command } from '../src/chat/command.ts';
import { ballForm } from './count-ball.ts';
import { blocksForm, diamondsForm, starForm, starsForm } from './count-diamonds.ts';
import { fieldForm } from './count-field.ts';
import { gardenForm, rosetteForm } from './count-rosettes.ts';

const count: Command = {
  name: 'count',
  summary: 'How many patches a layout takes, its seams and its real size',
  forms: [fieldForm, rosetteForm, gardenForm, starForm, starsForm, diamondsForm, blocksForm, ballForm],
};

export default count;
