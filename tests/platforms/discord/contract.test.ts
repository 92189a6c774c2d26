import { commands } from '../../../commands/index.ts';
import { openRoom, type Room } from '../../../src/chat/dispatch.ts';
import { document, type Reply } from '../../../src/chat/reply.ts';
import { BOT } from '../../standin/discord/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { keepsTheContract } from '../contract.ts';
import { buttonsOf, embedOf, running } from './bot.ts';

/** A message as it is read: the marks that keep text plain are not seen, the buttons are. */
function readAs(seen: { body: Record<string, unknown> }): string {
  const { title = '', description = '', fields = [] } = embedOf(seen);
  const cells = fields.flatMap(({ name, value }) => [name, value]);
  const labels = buttonsOf(seen).map(({ label }) => label);
  return [title, description, ...cells, ...labels].join('\n').replace(/\\([\\*_~`|<>#[\]()-])/g, '$1');
}

keepsTheContract({
  name: 'discord',
  async open() {
    const facts = memoryFacts();
    const room = openRoom({
      commands,
      facts,
      onFault: (error) => {
        throw error;
      },
    });
    const replies = new Map<string, Reply>();
    const listening: Room = {
      async answer(ask) {
        const answered = await room.answer(ask);
        replies.set(`${ask.who.id} ${ask.words}`, answered);
        return answered;
      },
    };
    const { standIn, platform } = await running({ facts, room: listening });
    let people = 0;
    const ids = new Map<string, string>();
    const idOf = (name: string) => {
      const id = ids.get(name) ?? String(700000000000000000n + BigInt(++people));
      ids.set(name, id);
      return id;
    };
    return {
      async say(who, words) {
        const seen = await standIn.deliver({
          who: { id: idOf(who), name: who },
          does: 'say',
          content: `<@${BOT.id}> ${words}`,
          bot: BOT.id,
        });
        const answered = replies.get(`${idOf(who)} ${words.trim()}`);
        if (!answered) throw new Error(`no reply to ${words}`);
        return { text: readAs(seen), document: document(answered) };
      },
      async hearsItself(words) {
        const before = standIn.seen.length;
        standIn.tell({
          who: { id: BOT.id, name: 'bee', bot: true },
          does: 'say',
          content: `<@${BOT.id}> ${words}`,
          bot: BOT.id,
        });
        await new Promise((done) => setTimeout(done, 50));
        return standIn.seen.length > before;
      },
      close: () => platform.stop(),
    };
  },
});
