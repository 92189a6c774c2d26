import { describe, expect, test } from 'vitest';
import { document, reply } from '../../src/chat/reply.ts';
import { render } from '../../src/platforms/terminal/render.ts';
import { wrap } from '../../src/platforms/terminal/wrap.ts';
import { answered, examples, openAsking } from '../commands/asking.ts';
import { keepsTheContract } from './contract.ts';
import { type FakeTerminal, fakeTerminal } from './fake-terminal.ts';

keepsTheContract({
  name: 'the terminal',
  async open() {
    const terminal = fakeTerminal();
    // One keyboard: each waits until the one before her has her answer.
    let turn: Promise<unknown> = Promise.resolve();
    const sayNow = async (who: string, words: string) => {
      terminal.input.write(`/as ${who}\n`);
      const before = terminal.screen.length;
      const answer = terminal.replies.length;
      terminal.input.write(`${words}\n`);
      await terminal.until(() => terminal.replies.length > answer && terminal.screen.endsWith('\n\n'), words);
      return { text: terminal.screen.slice(before), document: document(terminal.replies[answer]!) };
    };
    return {
      say(who, words) {
        const said = turn.then(() => sayNow(who, words));
        turn = said.catch(() => {});
        return said;
      },
      async close() {
        terminal.input.end();
        await terminal.left;
      },
    };
  },
});

const PROMPT = 'you> ';
const ready = (terminal: FakeTerminal, prompt = PROMPT) =>
  terminal.until(() => terminal.screen.endsWith(prompt), prompt);

async function entered(terminal: FakeTerminal, line: string, prompt = PROMPT): Promise<void> {
  await terminal.type(line, '\r');
  await ready(terminal, prompt);
}

const live = async (settings: { columns?: number; history?: string[] } = {}) => {
  const terminal = fakeTerminal({ live: true, ...settings });
  await ready(terminal);
  return terminal;
};

describe('the room at a terminal', () => {
  test('greets with what it is and three asks to try, each of which is answered', async () => {
    const terminal = await live();
    expect(terminal.screen).toMatch(/^Honeycount works out hand-pieced hexagons and diamonds/);
    const shown = [...terminal.screen.matchAll(/^ {2}(\S.*?)\r?$/gm)].map(([, ask = '']) => ask);
    expect(shown).toHaveLength(3);
    expect(shown.filter((ask) => !ask.startsWith('/'))).toHaveLength(1);
    const ask = openAsking();
    for (const words of shown) await answered(ask, words);
    expect(terminal.screen).toMatch(/\/help[\s\S]*Tab[\s\S]*Ctrl-D/);
    await terminal.type('\u0004');
    await terminal.left;
  });

  test('the greeting fits a narrow screen', async () => {
    const terminal = await live({ columns: 44 });
    for (const line of terminal.screen.split('\n')) expect(line.length).toBeLessThanOrEqual(44);
    await terminal.type('\u0004');
    await terminal.left;
  });

  test('answers what is typed and asks for the next', async () => {
    const terminal = await live();
    await entered(terminal, '/cut hexagon 1 1/2in');
    expect(terminal.screen).toMatch(
      /you> \/cut hexagon 1 1\/2in\r?\nHexagon, 1 1\/2 in side\nCut 3 1\/8 in \(3\.098\)/,
    );
    await entered(terminal, '');
    expect(terminal.replies).toHaveLength(1);
    await terminal.type('\u0004');
    await terminal.left;
  });

  test('when somebody is forgotten, so is what was typed', async () => {
    const terminal = await live();
    await entered(terminal, '/me set seam:3/8in');
    await entered(terminal, '/me forget');
    expect(terminal.remembered).toHaveLength(2);
    await entered(terminal, '1');
    expect(terminal.replies.at(-1)?.title).toBe('Forgotten');
    expect(terminal.remembered).toEqual([]);
    await terminal.type('\u0004');
    await terminal.left;
  });

  test('the end of input leaves, on a line of its own', async () => {
    const terminal = await live();
    await terminal.type('\u0004');
    await terminal.left;
    expect(terminal.screen).toMatch(/you> \r?\n$/);
  });

  test.each(['quit', '/exit', 'Bye'])('so does %s', async (word) => {
    const terminal = await live();
    await terminal.type(word, '\r');
    await terminal.left;
    expect(terminal.replies).toEqual([]);
  });

  test('the arrow key finds the lines of this sitting and of earlier ones', async () => {
    const terminal = await live({ history: ['/count rosette rounds:2', '/cut hexagon 1in'] });
    await entered(terminal, '/help');
    await terminal.type('\u001b[A', '\u001b[A', '\r');
    await ready(terminal);
    await terminal.until(() => terminal.asks.length === 2);
    expect(terminal.asks.map(({ words }) => words)).toEqual(['/help', '/count rosette rounds:2']);
    expect(terminal.remembered).toEqual(['/help', '/count rosette rounds:2']);
    await terminal.type('\u0004');
    await terminal.left;
  });

  test.each([
    ['/cu', '/cut '],
    ['/count ga', '/count garden '],
    ['/count garden pa', '/count garden path:'],
    ['/count garden path:di', '/count garden path:diamonds '],
    ['/cut kit', '/cut kite '],
    ['/cut shape:tri', '/cut shape:triangle '],
    ['/help ya', '/help yardage '],
    ['/me se', '/me set '],
  ])('Tab makes %s into %s', async (typed, completed) => {
    const terminal = await live();
    await terminal.type(typed, '\t');
    await terminal.until(
      () => terminal.screen.endsWith(`${PROMPT}${completed}`) || terminal.screen.endsWith(completed),
      completed,
    );
    await terminal.type('\u0015', '\u0004');
    await terminal.left;
  });

  test('Tab completes the names of what is kept', async () => {
    const terminal = await live();
    await entered(terminal, '/challenge open name:Spring');
    await terminal.type('/standings challenge:Sp', '\t');
    await terminal.until(() => terminal.screen.includes('/standings challenge:Spring'));
    await terminal.type('\r', '\u0004');
    await terminal.left;
    expect(terminal.replies.at(-1)?.title).toBe('Spring');
  });

  test('Tab twice shows what may follow', async () => {
    const terminal = await live();
    await terminal.type('/count ', '\t', '\t');
    await terminal.until(() => /field +rosette +garden/.test(terminal.screen), 'the layouts');
    await terminal.type('\u0015', '\u0004');
    await terminal.left;
  });

  test('a number chooses among the readings just offered, and nothing otherwise', async () => {
    const terminal = await live();
    await entered(terminal, '/cut hexagon 4in');
    await entered(terminal, '2');
    expect(terminal.asks.at(-1)?.words).toBe('/cut shape:hexagon size:4in measure:flats');
    expect(terminal.replies.at(-1)?.title).toBe('Hexagon, 4 in flat to flat');
    await entered(terminal, '2');
    expect(terminal.asks.at(-1)?.words).toBe('2');
    expect(terminal.replies.at(-1)?.error).not.toBeNull();
    await terminal.type('\u0004');
    await terminal.left;
  });

  test('/as changes who asks, what she has kept and what she may do; the prompt says who', async () => {
    const terminal = await live();
    await entered(terminal, '/as Ada Lovelace', 'Ada Lovelace> ');
    await entered(terminal, '/me set seam:3/8in', 'Ada Lovelace> ');
    expect(terminal.asks.at(-1)?.who).toEqual({ id: 'Ada Lovelace', name: 'Ada Lovelace', organiser: false });
    await entered(terminal, '/guild set seam:1/2in', 'Ada Lovelace> ');
    expect(terminal.replies.at(-1)?.error?.code).toBe('organisers-only');
    await entered(terminal, '/as Olga organiser', 'Olga> ');
    expect(terminal.screen).toContain('Olga is at the keyboard, as an organiser.');
    await entered(terminal, '/guild set seam:1/2in', 'Olga> ');
    expect(terminal.replies.at(-1)?.error).toBeNull();
    await entered(terminal, '/as you');
    await entered(terminal, '/cut hexagon 1in');
    expect(terminal.replies.at(-1)?.notes.join()).toContain('the guild’s 1/2 in seam');
    await entered(terminal, '/as');
    expect(terminal.screen).toContain('Who? For example /as Ada');
    await terminal.type('\u0004');
    await terminal.left;
  });

  test('a choice of one member is not the next one’s', async () => {
    const terminal = await live();
    await entered(terminal, '/cut hexagon 4in');
    await entered(terminal, '/as Ada', 'Ada> ');
    await entered(terminal, '2', 'Ada> ');
    expect(terminal.asks.at(-1)?.words).toBe('2');
    await terminal.type('\u0004');
    await terminal.left;
  });

  test('without a keyboard there is no greeting, no prompt and no colour', async () => {
    const terminal = fakeTerminal();
    terminal.input.end('/cut hexagon 1in\n/count rosette\n');
    await terminal.left;
    expect(terminal.raw).toMatch(/^Hexagon, 1 in side/);
    expect(terminal.raw).not.toContain('\u001b');
    expect(terminal.raw).not.toContain('> ');
    expect(terminal.replies).toHaveLength(2);
  });

  test('a line may end as on any system, and the last one may not end at all', async () => {
    const terminal = fakeTerminal();
    terminal.input.end('/cut hexagon 1in\r\n/count rosette\n/help');
    await terminal.left;
    expect(terminal.replies.map(({ command }) => command)).toEqual(['cut', 'count', 'help']);
  });
});

describe('a reply on a narrow screen', () => {
  const ask = openAsking();

  test.each(examples)('%s at 44 signs', async (example) => {
    const made = await ask(example, { organiser: true });
    for (const line of render(made, { width: 44 }).split('\n'))
      if (line.trim().includes(' ')) expect([...line].length, line).toBeLessThanOrEqual(44);
    for (const line of render(made, { width: 72 }).split('\n')) expect(line).not.toMatch(/\s$/);
  });

  test('colour adds nothing to read', async () => {
    const made = await ask('/cut hexagon 4in');
    const plain = render(made, { width: 60 });
    const coloured = render(made, { width: 60, colour: true });
    expect(coloured).toContain('\u001b[');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: taking the colours off again
    expect(coloured.replaceAll(/\u001b\[\d+m/g, '')).toBe(plain.replaceAll('`', ''));
  });

  test('a number is not parted from its fraction or its unit', () => {
    expect(wrap('a square of 2 5/16 in', 15)).toBe('a square of\n2 5/16 in');
    expect(wrap('from a quarter of 18 x 21 in', 20)).toBe('from a quarter of\n18 x 21 in');
    expect(wrap('1 → 2, 10 → 11', 12)).toBe('1 → 2,\n10 → 11');
    expect(wrap('Yours differ? `/me set`', 20)).toBe('Yours differ?\n`/me set`');
  });

  test('a word longer than the line stands alone and whole', () => {
    expect(wrap(`see ${'x'.repeat(50)} there`, 44)).toBe(`see\n${'x'.repeat(50)}\nthere`);
  });

  test('signs are counted as they are seen', () => {
    expect(wrap('🐝🐝🐝 🐝🐝🐝', 7)).toBe('🐝🐝🐝 🐝🐝🐝');
  });

  test('a picture is told only where its file is', () => {
    const made = reply({ title: 'A', pictures: [{ name: 'a.svg', alt: 'a hexagon', of: { draw: 'none' } }] });
    expect(render(made)).not.toContain('a hexagon');
    expect(render(made, { files: new Map([['a.svg', '/x/a.svg']]) })).toContain('/x/a.svg: a hexagon');
  });
});
