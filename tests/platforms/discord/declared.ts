import { commands } from '../../../commands/index.ts';
import type { Form } from '../../../src/chat/command.ts';
import type { AnyOption } from '../../../src/chat/option.ts';
import { readOptions } from '../../../src/chat/read-options.ts';
import { tidy } from '../../../src/measure/tidy.ts';
import { DEFAULT_FORM } from '../../../src/platforms/discord/register.ts';

/** One form of a command, as the platform calls it. */
export interface DeclaredForm {
  readonly name: string;
  readonly sub?: string;
  readonly form: Form;
}

/** An example of a form: as it is typed, and its options each in words. */
export interface Example extends DeclaredForm {
  readonly typed: string;
  readonly options: Readonly<Record<string, string>>;
}

/** Every form of every command. */
export const declaredForms: readonly DeclaredForm[] = (
  await Promise.all(Object.values(commands).map((load) => load()))
).flatMap(({ name, forms }) =>
  forms.map((form) =>
    forms.length > 1 || form.name ? { name, sub: form.name || DEFAULT_FORM, form } : { name, form },
  ),
);

const CONTEXT = { unit: 'in', today: '2026-12-01' } as const;

/** The examples of a form, with the options that the words are read as. */
export const examplesOf = (declared: DeclaredForm): Example[] =>
  declared.form.examples.map((typed) => {
    const { form } = declared;
    const own = form.name ? new RegExp(`^${form.name}\\s*`) : /^/;
    const words = tidy(typed.replace(/^\/\S+\s*/, '').replace(own, ''));
    const read = readOptions(form.options, words, CONTEXT, 'command');
    if (!read.ok) throw new Error(`${typed}: ${read.problem.code}`);
    const options = Object.entries(read.value.values).map(([key, value]) => [
      key,
      form.options[key]?.write(value) ?? '',
    ]);
    return { ...declared, typed, options: Object.fromEntries(options) };
  });

/** How an option is offered and read: one of each is tried. */
export const kindOf = ({ kind, shape }: AnyOption): string => `${kind} as ${shape.as}`;
