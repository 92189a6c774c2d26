import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/index.ts';
import type { Form } from '../../src/chat/command.ts';
import { readOptions } from '../../src/chat/read-options.ts';
import { writeAsk } from '../../src/chat/write-ask.ts';

const formOf = async (command: string, name: string): Promise<Form> => {
  const found = (await commands[command]?.())?.forms.find((one) => one.name === name);
  if (!found) throw new Error(`no form ${command} ${name}`);
  return found;
};

const IN = { unit: 'in', today: '2026-12-01' } as const;

describe('an ask written out in full', () => {
  it('names each option in the order of its declaration, and leaves out what is not there', async () => {
    const cut = await formOf('cut', '');
    expect(writeAsk('cut', cut, { seam: 0.375, size: { value: 1.5 }, shape: 'hexagon', edge: null })).toBe(
      '/cut shape:hexagon size:1 1/2in seam:3/8in',
    );
    expect(writeAsk('cut', cut, {})).toBe('/cut');
    expect(writeAsk('count', await formOf('count', 'rosette'), { rounds: 3 })).toBe(
      '/count rosette rounds:3',
    );
  });

  it('is read as the same values, and written again the same', async () => {
    const field = await formOf('count', 'field');
    const side = fc.integer({ min: 8, max: 480 * 8 }).map((eighths) => eighths / 8);
    const valuesOf = fc.record({
      quilt: fc.record({ width: side, height: side }),
      size: side,
      rows: fc.constantFrom('across', 'down'),
      sides: fc.constantFrom('whole', 'cover', 'straight'),
    });
    fc.assert(
      fc.property(valuesOf, (values) => {
        const written = writeAsk('count', field, values);
        const read = readOptions(field.options, written.replace('/count field ', ''), IN, 'command');
        expect(read.ok && read.value.values).toEqual(values);
        expect(read.ok && writeAsk('count', field, read.value.values)).toBe(written);
      }),
    );
  });

  it('every example of every command is read, and written out is read as the same', async () => {
    let many = 0;
    for (const [name, load] of Object.entries(commands)) {
      for (const form of (await load()).forms) {
        for (const example of form.examples) {
          const words = example.replace(/^\/\S+ ?/, '').replace(new RegExp(`^${form.name}\\b ?`), '');
          const read = readOptions(form.options, words, IN, 'command');
          expect(read.ok, example).toBe(true);
          if (!read.ok) continue;
          const written = writeAsk(name, form, read.value.values);
          const again = written.replace(form.name ? `/${name} ${form.name}` : `/${name}`, '').trim();
          const back = readOptions(form.options, again, IN, 'command');
          expect(back.ok && back.value.values, `${example} as ${written}`).toEqual(read.value.values);
          many++;
        }
      }
    }
    expect(many).toBeGreaterThan(20);
  });
});
