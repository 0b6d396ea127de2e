import { flexWorkings, vibrationTest } from '../../core/flex/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import type { Working } from '../../core/working/index.ts';
import type { Command } from './command.ts';
import { answered, asking } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { tableOf } from './table.ts';

export const vibrate: Command = {
  usage: 'PAIR',
  summary: 'At what frequencies the ski swings, free or clamped under the boot',
  options: { clamped: { type: 'boolean' }, modes: { type: 'string' } },
  notes: '--clamped holds the ski over the boot sole; --modes N, 1 to 20 (6 unless given).',
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const count = oneNumber(options, 'modes', { unit: 'modes', from: 1, to: 20, whole: true }, 6);
    const clamped = options.clamped === true;
    const { modes } = answered(
      file,
      asking(file, () => vibrationTest(ski, { clamped, modes: count })),
    );
    const json = { name: ski.name, modes: modes.map(({ hz, kind }) => ({ hz: rounded(hz), kind })) };
    const table = {
      title: `${ski.name}, ${clamped ? 'clamped under the boot' : 'free'}`,
      ...tableOf(json.modes, [{ name: 'hz', decimals: 1 }, { name: 'kind' }]),
    };
    return { json, tables: [table], csv: table, workings: clamped ? [] : freeWorkings(ski) };
  },
};

/** The free modes are solved on elements; the uniform beam's first one is what they can be held against. */
function freeWorkings(ski: Ski): Working[] {
  return flexWorkings(ski).filter(({ key }) => key === 'flex.first-frequency-uniform');
}
