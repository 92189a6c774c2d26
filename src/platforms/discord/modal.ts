import { type ButtonInteraction, ComponentType, TextInputStyle } from 'discord.js';
import type { Form } from '../../chat/command.ts';
import type { NotesKept } from '../../chat/facts.ts';
import { type Filling, idOfForm } from './choices.ts';
import { cutTo, LIMITS } from './limits.ts';

const SHORT_WORDS = 100;

/** Asks for the options that a choice leaves to be filled in, each in a line of its own. */
export async function openModal(
  event: ButtonInteraction,
  { ask, names }: Filling,
  form: Form,
  notes: NotesKept,
): Promise<void> {
  const asked = names.slice(0, LIMITS.modalInputs);
  const whose = { guild: event.guildId ?? '', member: event.user.id };
  await event.showModal({
    customId: await idOfForm({ ask, names: asked }, whose, notes),
    title: headOf(form.summary),
    components: asked.map((name) => ({ type: ComponentType.ActionRow, components: [inputFor(name, form)] })),
  });
}

/** A summary that is too long for a head is told as far as its first comma. */
function headOf(summary: string): string {
  const [clause = ''] = summary.length > LIMITS.modalTitle ? summary.split(/[,;:]/) : [summary];
  return cutTo(clause, LIMITS.modalTitle);
}

function inputFor(name: string, { options }: Form) {
  const option = options[name];
  const longest = option?.shape.as === 'words' ? (option.shape.longest ?? LIMITS.inputLength) : SHORT_WORDS;
  return {
    type: ComponentType.TextInput as const,
    customId: name,
    label: cutTo(option?.summary ?? name, LIMITS.modalLabel),
    style: longest > SHORT_WORDS ? TextInputStyle.Paragraph : TextInputStyle.Short,
    required: option?.required ?? false,
    placeholder: option?.example ?? '',
    maxLength: Math.min(longest, LIMITS.inputLength),
  };
}
