import { flexWorkings, modeName, vibrationTest } from '../../core/flex/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import type { Working } from '../../core/working/index.ts';
import type { Command } from './command.ts';
import { answered, asking } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { tableOf } from './table.ts';
import { t, told } from './words.ts';

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
    const columns = [{ name: 'hz', decimals: 1 }, { name: 'kind' }] as const;
    const spoken = modes.map((mode, i) => ({ hz: json.modes[i].hz, kind: told(modeName(mode)) }));
    const title = t(clamped ? 'calc.vibrate.clamped' : 'calc.vibrate.free', { name: ski.name });
    return {
      json,
      tables: [{ title, ...tableOf(spoken, columns) }],
      csv: tableOf(json.modes, columns),
      workings: clamped ? [] : freeWorkings(ski),
    };
  },
};

/** The free modes are solved on elements; the uniform beam's first one is what they can be held against. */
function freeWorkings(ski: Ski): Working[] {
  return flexWorkings(ski).filter(({ key }) => key === 'flex.first-frequency-uniform');
}
