import type { AutocompleteInteraction } from 'discord.js';
import type { AnyOption } from '../../chat/option.ts';
import type { PlatformNeeds } from '../platform.ts';
import { optionsOf } from './asked.ts';
import { LIMITS } from './limits.ts';
import { codeOf, HEARD_ALREADY, TOO_LATE } from './respond.ts';

const NOT_WAITED_FOR: ReadonlySet<unknown> = new Set([TOO_LATE, HEARD_ALREADY]);

/** What the option being typed may become: known words, and names that are kept. */
export async function suggest(event: AutocompleteInteraction, needs: PlatformNeeds): Promise<void> {
  const { name: focused, value: typed } = event.options.getFocused(true);
  const { command: name, form: formName } = optionsOf(event as never);
  const load = Object.hasOwn(needs.commands, name) ? needs.commands[name] : undefined;
  const form = (await load?.())?.forms.find((one) => one.name === formName);
  const option = form && Object.hasOwn(form.options, focused) ? form.options[focused] : undefined;
  const words = option ? await wordsFor(option, event, needs) : [];
  const offered = matching(words, String(typed))
    .slice(0, LIMITS.choices)
    .map((word) => ({ name: word.slice(0, LIMITS.choiceName), value: word.slice(0, LIMITS.choiceName) }));
  try {
    await event.respond(offered);
  } catch (error) {
    // She has typed on meanwhile.
    if (!NOT_WAITED_FOR.has(codeOf(error))) throw error;
  }
}

async function wordsFor(option: AnyOption, event: AutocompleteInteraction, needs: PlatformNeeds) {
  if (option.suggest)
    return option.suggest({
      guild: event.guildId ?? '',
      place: event.channelId,
      member: event.user.id,
      facts: needs.facts,
    });
  return option.shape.as === 'choice' ? option.shape.choices.map((one) => one.name) : (option.known ?? []);
}

/** Words that begin as typed before words that hold it; what was typed stays first, so that it can be sent. */
function matching(words: readonly string[], typed: string): string[] {
  const lower = typed.trim().toLowerCase();
  if (lower === '') return [...words];
  const begin = words.filter((word) => word.toLowerCase().startsWith(lower));
  const hold = words.filter((word) => !begin.includes(word) && word.toLowerCase().includes(lower));
  return [...begin, ...hold];
}
