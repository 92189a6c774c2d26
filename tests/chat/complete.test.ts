import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import { complete } from '../../src/chat/complete.ts';
import { ask, roomOf } from './fakes.ts';

const words = async (line: string) => (await complete(commands, line)).words;

describe('what the last word may become', () => {
  it('a command', async () => {
    expect(await words('/c')).toEqual(['/cut ', '/count ', '/check ', '/challenge ']);
    expect(await words('')).toHaveLength(Object.keys(commands).length);
    expect(await complete(commands, '/yie')).toEqual({ words: ['/yield '], replaces: '/yie' });
  });

  it('a form', async () => {
    expect(await words('/count ro')).toEqual(['rosette ']);
    expect(await words('/count sta')).toEqual(['star ', 'stars ']);
    expect(await words('!me s')).toEqual(expect.arrayContaining(['set ']));
  });

  it('an option’s name', async () => {
    expect(await words('/cut hexagon 1in sea')).toEqual(['seam:']);
    expect(await words('/cut se')).toContain('seam:');
  });

  it('a choice, by name or bare', async () => {
    expect(await words('/cut hexa')).toEqual(['hexagon ']);
    expect(await words('/cut shape:ki')).toEqual(['shape:kite ']);
    expect(await complete(commands, '/cut 1in shape:tri')).toEqual({
      words: ['shape:triangle '],
      replaces: 'shape:tri',
    });
  });

  it('a piece of cloth, a bed', async () => {
    expect(await words('/yield hexagon 1in fat')).toEqual(['fat-quarter ', 'fat-eighth ']);
    expect(await words('/yield hexagon 1in cloth:5')).toEqual(['cloth:5in-square ']);
    expect(await words('/count field que')).toEqual(['queen ']);
  });

  it('a command to explain', async () => {
    expect(await words('/help cu')).toEqual(['cut ']);
  });

  it('nothing that is there already', async () => {
    expect(await words('/cut hexagon tri')).toEqual([]);
    expect(await words('/cut seam:1/4in sea')).toEqual([]);
    expect(await words('/cut seam 1/4in sea')).toEqual([]);
  });

  it('nothing for what is unknown, a plain question, or a name of the language’s own', async () => {
    for (const line of [
      '/fish ',
      '/fish f',
      'how many hexa',
      '/cut constructor:',
      '/constructor ',
      '/cut __proto__:a',
      '/count toString ',
    ])
      expect(await words(line), line).toEqual([]);
  });

  it('every bare word that is offered is read', async () => {
    const { room } = roomOf(commands);
    const offered = (await words('/cut 1x2in ')).filter((word) => !word.endsWith(':'));
    expect(offered.length).toBeGreaterThan(8);
    for (const word of offered) {
      const { error } = await room.answer(ask(`/cut size:1in ${word}`));
      expect(error?.code ?? 'none', word).not.toBe('words-unread');
    }
  });
});
