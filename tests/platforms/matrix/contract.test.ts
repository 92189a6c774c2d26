import { commands } from '../../../commands/index.ts';
import { openRoom, type Room } from '../../../src/chat/dispatch.ts';
import { document, type Reply } from '../../../src/chat/reply.ts';
import type { WireEvent } from '../../standin/matrix/place.ts';
import { BOT, MatrixStandIn } from '../../standin/matrix/standin.ts';
import { memoryFacts } from '../../standin/memory-facts.ts';
import { keepsTheContract } from '../contract.ts';
import { until, userOf, Voice } from './bot.ts';
import { startedBot } from './started.ts';

/** What is read of a message in a client that shows mark-up. */
const readAs = ({ content }: WireEvent): string =>
  String(content.formatted_body ?? content.body)
    .replaceAll(/<br>|<\/t[rdh]>/g, '\n')
    .replaceAll(/<[^>]+>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');

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
    replies.set(ask.event ?? '', answered);
    return answered;
  },
};
const bot = startedBot(() => MatrixStandIn.open(), { facts, room: listening });
let people = 0;

keepsTheContract({
  name: 'matrix',
  // Asks to type are written with the prefix that they are typed with here.
  async open() {
    const { standIn } = await bot();
    const place = standIn.makeRoom({ members: [userOf('olga'), userOf('other')] });
    const known = new Map<string, Voice>();
    /** Somebody comes in under a name, with a direct room of her own for what is hers alone. */
    const voiceOf = async (name: string): Promise<Voice> => {
      const before = known.get(name);
      if (before) return before;
      const user = userOf(`p${++people}`);
      const content = { membership: 'join', displayname: name };
      standIn.put(place, { type: 'm.room.member', sender: user, state_key: user, content });
      const direct = standIn.makeRoom({ members: [user] });
      await facts.notes.keep('matrix', `direct:${user}`, { room: direct });
      const voice = new Voice(standIn, place, user);
      known.set(name, voice);
      directs.set(voice, new Voice(standIn, direct, user));
      return voice;
    };
    const directs = new Map<Voice, Voice>();
    return {
      async say(who, words) {
        const voice = await voiceOf(who);
        const direct = directs.get(voice) as Voice;
        const before = direct.sent().length;
        const event = words.startsWith('/') ? voice.say(`!${words.slice(1)}`) : voice.sayTo(words);
        const here = await voice.answerTo(event);
        const reply = replies.get(`matrix:${event}`);
        if (!reply) throw new Error(`no reply to ${words}`);
        const apart = reply.audience === 'asker' && !reply.error;
        if (apart) await until(() => direct.sent().length > before, 'an answer apart');
        const read = readAs(apart ? (direct.sent()[before] as WireEvent) : here);
        // An ask to type is shown with the sign that it is typed with here.
        return { text: read.replaceAll(/(?<![\w/])!(?=[a-z])/g, '/'), document: document(reply) };
      },
      async hearsItself(words) {
        const itself = new Voice(standIn, place, BOT);
        const event = words.startsWith('/') ? itself.say(`!${words.slice(1)}`) : itself.sayTo(words);
        // What is said after it is answered after it.
        await (await voiceOf('Other')).settled();
        return itself.answersTo(event).length > 0;
      },
      async close() {},
    };
  },
});
