import type { Form } from './command.ts';

/**
 * An ask written out in full, each option by its name in the order of the declaration: what a choice stands
 * for, and what a plain question was read as.
 */
export function writeAsk(command: string, form: Form, values: Readonly<Record<string, unknown>>): string {
  const head = form.name ? `/${command} ${form.name}` : `/${command}`;
  const parts = Object.entries(form.options)
    .filter(([key]) => values[key] !== undefined && values[key] !== null)
    .map(([key, option]) => `${key}:${option.write(values[key])}`);
  return [head, ...parts].join(' ');
}
