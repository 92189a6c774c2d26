import { ok } from '../measure/result.ts';
import type { Option } from './option.ts';

/** Words up to the next of these names, where they may stand without a name of their own. */
export function wordsUpTo(option: Option<string, false>, names: readonly string[]): Option<string, false> {
  const next = new RegExp(`(?:^|\\s)(?:${names.join('|')})\\s*[:=]`, 'i');
  return {
    ...option,
    take(text, context) {
      const end = (context.alone ? null : next.exec(text))?.index ?? text.length;
      const taken = option.take(text.slice(0, end), context);
      return taken?.ok ? ok({ value: taken.value.value, rest: text.slice(end) }) : taken;
    },
  };
}
