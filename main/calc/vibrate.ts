import { vibrationTest } from '../../core/flex/index.ts';
import type { Command } from './command.ts';
import { answered, asking } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';

export const vibrate: Command = {
  usage: 'PAIR',
  summary: 'At what frequencies the ski swings, free or clamped under the boot',
  options: { clamped: { type: 'boolean' }, modes: { type: 'string' } },
  files: [1, 1],
  async run({ files: [file], options, read }) {
    const ski = await skiFrom(file, read);
    const count = oneNumber(options, 'modes', { unit: 'modes', from: 1, to: 20, whole: true }, 6);
    const clamped = options.clamped === true;
    const { modes } = answered(
      file,
      asking(file, () => vibrationTest(ski, { clamped, modes: count })),
    );
    const json = { name: ski.name, modes: modes.map(({ hz, kind }) => ({ hz: rounded(hz), kind })) };
    const table = {
      title: `${ski.name}, ${clamped ? 'clamped under the boot' : 'free'}`,
      columns: [{ name: 'hz', decimals: 1 }, { name: 'kind' }],
      rows: json.modes.map(({ hz, kind }) => [hz, kind]),
    };
    return { json, tables: [table], csv: table, workings: [] };
  },
};
