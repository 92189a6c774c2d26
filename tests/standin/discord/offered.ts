import type { EventNeeds } from './events.ts';

/** An option as it was registered. */
export interface Offered {
  readonly name: string;
  readonly description?: string;
  readonly type: number;
  readonly required?: boolean;
  readonly options?: readonly Offered[];
  readonly choices?: readonly { readonly value: unknown }[];
  readonly min_value?: number;
  readonly max_value?: number;
  readonly max_length?: number;
  readonly autocomplete?: boolean;
}

type Given = Extract<EventNeeds, { does: 'slash' | 'typing' }>;

const FITS: Readonly<Record<number, (value: unknown) => boolean>> = {
  3: (value) => typeof value === 'string',
  4: (value) => Number.isInteger(value),
  5: (value) => typeof value === 'boolean',
  10: (value) => typeof value === 'number',
};

/** The options that a member is offered for a command as it is registered; null where there is no such command. */
export function offeredFor(
  commands: readonly unknown[],
  { name, sub }: Pick<Given, 'name' | 'sub'>,
): readonly Offered[] | null {
  const command = (commands as readonly Offered[]).find((one) => one.name === name);
  const options = command?.options ?? [];
  if (sub === undefined) return command && options.every(({ type }) => type > 2) ? options : null;
  const subcommand = options.find((one) => one.type === 1 && one.name === sub);
  return subcommand ? (subcommand.options ?? []) : null;
}

/** What a member's own program would not let her send: an option that is not offered, or a value that it refuses. */
export function unofferedIn(commands: readonly unknown[], given: Given): string[] {
  const what = `/${given.name} ${given.sub ?? ''}`.trim();
  const offered = offeredFor(commands, given);
  if (!offered) return [`${what} is not offered`];
  const options = given.options ?? {};
  const missing = offered.filter(({ name, required }) => required && !Object.hasOwn(options, name));
  return [
    ...(given.does === 'slash' ? missing.map(({ name }) => `${what}: ${name} is missing`) : []),
    ...Object.entries(options).flatMap(([name, value]) => {
      const option = offered.find((one) => one.name === name);
      const typing = given.does === 'typing' && given.focused === name;
      if (typing && option) return option.autocomplete ? [] : [`${what}: ${name} is not completed`];
      return refusalsOf(option, value).map((why) => `${what}: ${name}: ${why}`);
    }),
  ];
}

function refusalsOf(option: Offered | undefined, value: unknown): string[] {
  if (!option) return ['not offered'];
  const { type, choices, min_value: least, max_value: most, max_length: longest } = option;
  if (!FITS[type]?.(value)) return [`${JSON.stringify(value)} is not of type ${type}`];
  if (choices && !choices.some((one) => one.value === value)) return [`${value} is not among the choices`];
  if (least !== undefined && (value as number) < least) return [`${value} is below ${least}`];
  if (most !== undefined && (value as number) > most) return [`${value} is above ${most}`];
  if (longest !== undefined && (value as string).length > longest) return [`longer than ${longest}`];
  return [];
}
