import { flexWorkings, vibrationTest } from '../../core/flex/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import type { Working } from '../../core/working/index.ts';
import type { Command } from './command.ts';
import { answered, asking } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { tableOf } from './table.ts';
import { t } from './words.ts';

export const vibrate: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.vibrate.summary',
  options: { clamped: { type: 'boolean' }, modes: { type: 'string' } },
  notes: { key: 'calc.vibrate.notes' },
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const count = oneNumber(
      options,
      'modes',
      { unit: 'modes', called: 'calc.modes', from: 1, to: 20, whole: true },
      6,
    );
    const clamped = options.clamped === true;
    const { modes } = answered(
      file,
      asking(file, () => vibrationTest(ski, { clamped, modes: count })),
    );
    const json = { name: ski.name, modes: modes.map(({ hz, kind }) => ({ hz: rounded(hz), kind })) };
    const table = {
      title: t(clamped ? 'calc.vibrate.clamped' : 'calc.vibrate.free', { name: ski.name }),
      ...tableOf(json.modes, [{ name: 'hz', decimals: 1 }, { name: 'kind' }]),
    };
    return { json, tables: [table], csv: table, workings: clamped ? [] : freeWorkings(ski) };
  },
};

/** The free modes are solved on elements; the uniform beam's first one is what they can be held against. */
function freeWorkings(ski: Ski): Working[] {
  return flexWorkings(ski).filter(({ key }) => key === 'flex.first-frequency-uniform');
}
