import { parseArgs } from 'node:util';
import { readSettings, type Settings, storeOf } from '../config.ts';
import { ok, type Result, wrong } from '../measure/result.ts';
import { ROOT } from './keeping.ts';

/** What a verb about the data as a whole is told. */
export interface DataFlags {
  readonly settings: Settings;
  /** The database's file. */
  readonly file: string;
  /** The file or folder that was named, if one was. */
  readonly named: string | undefined;
}

const OPTIONS = { data: { type: 'string' }, config: { type: 'string' } } as const;

/** Reads `--data`, `--config` and at most one file's name. */
export async function readDataFlags(args: readonly string[]): Promise<Result<DataFlags>> {
  const parsed = parse(args);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  if (positionals.length > 1) return wrong('flag-one-file', { got: positionals.join(' ') });
  const settings = await readSettings({ file: values.config, env: process.env, root: ROOT });
  if (!settings.ok) return settings;
  const file = values.data ?? storeOf(settings.value);
  if (/^\w+:\/\//.test(file)) return wrong('store-not-served', { kind: file.slice(0, file.indexOf(':')) });
  return ok({ settings: settings.value, file, named: positionals[0] });
}

function parse(args: readonly string[]) {
  try {
    return ok(parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true }));
  } catch (error) {
    return wrong('flag-unread', {
      got: error instanceof Error ? error.message.split('. ')[0] : '',
      known: Object.keys(OPTIONS),
    });
  }
}
