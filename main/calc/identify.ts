import { identify as identifyProfile } from '../../core/flex/index.ts';
import { MM } from '../../core/units/index.ts';
import { readBenchReadings } from './bench-readings.ts';
import type { Command } from './command.ts';
import { expectKind } from './expect-kind.ts';
import { asking, InputFault } from './fault.ts';
import { acceptedIn, oneNumber } from './option.ts';
import { rounded } from './quantity.ts';
import { CONTACT_LENGTH } from './ranges.ts';
import { tableOf } from './table.ts';
import { t, told } from './words.ts';

export const identify: Command = {
  usage: 'calc.usage.measurements',
  summary: 'calc.identify.summary',
  options: { 'contact-length': { type: 'string' } },
  notes: { key: 'calc.identify.notes' },
  files: [1, 1],
  async run({ files: [file], options, read }) {
    const lengthMm = oneNumber(options, 'contact-length', CONTACT_LENGTH);
    if (lengthMm === null) {
      throw new InputFault(t('calc.identify.lengthMissing', { accepted: acceptedIn(CONTACT_LENGTH) }));
    }
    const length = lengthMm * MM;
    const readings = readBenchReadings(file, expectKind(file, await read(file), 'bench'), length);
    const found = asking(file, () => identifyProfile(readings, { length }));
    const json = {
      stations: found.stations.map(({ x, newtonM2, low, high }) => ({
        fromTailMm: rounded(x / MM),
        newtonM2: rounded(newtonM2),
        low: rounded(low),
        high: rounded(high),
      })),
      residualMm: rounded(found.residual / MM),
      enough: found.enough,
    };
    const table = tableOf(json.stations, [
      { name: 'fromTailMm', decimals: 0 },
      { name: 'newtonM2', decimals: 1 },
      { name: 'low', decimals: 1 },
      { name: 'high', decimals: 1 },
    ]);
    return {
      json,
      tables: [{ title: t('calc.identify.title', { count: readings.length }), ...table }],
      csv: table,
      words: [
        t('calc.identify.residual', { residual: Number((found.residual / MM).toPrecision(2)) }),
        ...found.notes.map(told),
      ].join('\n'),
      workings: [],
    };
  },
};
