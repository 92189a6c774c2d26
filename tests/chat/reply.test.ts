import { describe, expect, it } from 'vitest';
import { count, day, document, inches, minutes, reply, squareInches, yards } from '../../src/chat/reply.ts';

describe('the reply document', () => {
  const full = reply({
    command: 'cut',
    title: 'Hexagon',
    lines: ['Cut 3 1/8 in.', 'One patch from a 3 1/2 in square.'],
    figures: { cutFlats: inches(Math.sqrt(3) * 1.5 + 0.5), rounds: count([1, 6, 12]) },
    table: { columns: ['', 'cut'], rows: [['side', '1.789 in']] },
    notes: ['¼ in seam'],
    cautions: ['close the blade'],
    asks: 'Which side?',
    choices: [{ label: 'side', ask: '/cut edge:3in' }],
    pictures: [{ name: 'patch.png', alt: 'A hexagon', of: { draw: 'patch', edge: 1 } }],
    audience: 'asker',
  });

  it('has every part by its name, the lines as one text, the figures to the full', () => {
    expect(JSON.parse(JSON.stringify(document(full)))).toEqual({
      command: 'cut',
      title: 'Hexagon',
      text: 'Cut 3 1/8 in.\nOne patch from a 3 1/2 in square.',
      figures: {
        cutFlats: { value: Math.sqrt(3) * 1.5 + 0.5, unit: 'in' },
        rounds: { value: [1, 6, 12], unit: '' },
      },
      table: { columns: ['', 'cut'], rows: [['side', '1.789 in']] },
      notes: ['¼ in seam'],
      cautions: ['close the blade'],
      asks: 'Which side?',
      choices: [{ label: 'side', ask: '/cut edge:3in' }],
      pictures: [{ name: 'patch.png', alt: 'A hexagon', file: null }],
      error: null,
    });
  });

  it('names the file of each picture that was written', () => {
    expect(document(full, new Map([['patch.png', '/tmp/patch.png']])).pictures[0]?.file).toBe(
      '/tmp/patch.png',
    );
    expect(document(full, new Map([['other.png', '/tmp/other.png']])).pictures[0]?.file).toBeNull();
  });

  it('of an empty reply has every part too', () => {
    expect(document(reply({}))).toEqual({
      command: '',
      title: '',
      text: '',
      figures: {},
      table: null,
      notes: [],
      cautions: [],
      asks: null,
      choices: [],
      pictures: [],
      error: null,
    });
    expect(reply({}).audience).toBe('everyone');
  });

  it('a figure says its unit', () => {
    expect(
      [inches(1), squareInches(1), minutes(1), yards(1), count(1), day('2026-12-01')].map(({ unit }) => unit),
    ).toEqual(['in', 'sq in', 'min', 'yd', '', 'date']);
  });
});
