import { parseArgs } from 'node:util';
import { ok, type Result, wrong } from '../measure/result.ts';

/** Which settings and which database to start with. */
export interface StartFlags {
  readonly data: string | undefined;
  readonly config: string | undefined;
}

export function readStartFlags(args: readonly string[]): Result<StartFlags> {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { data: { type: 'string' }, config: { type: 'string' } },
    });
    return ok({ data: values.data, config: values.config });
  } catch (error) {
    const got = error instanceof Error ? error.message.split('. ')[0] : '';
    return wrong('flag-unread', { got, known: ['config', 'data'] });
  }
}
