import { identify as identifyProfile } from '../../core/flex/index.ts';
import { MM } from '../../core/units/index.ts';
import { readBenchReadings } from './bench-readings.ts';
import type { Command } from './command.ts';
import { expectKind } from './expect-kind.ts';
import { asking, InputFault } from './fault.ts';
import { oneNumber } from './option.ts';
import { rounded } from './quantity.ts';
import { CONTACT_LENGTH } from './ranges.ts';
import { tableOf } from './table.ts';
import { inWords } from './words.ts';

export const identify: Command = {
  usage: 'MEASUREMENTS.csv',
  summary: 'The stiffness profile that explains readings taken on a bench',
  options: { 'contact-length': { type: 'string' } },
  notes:
    'The CSV names loadFromTailMm (or loadAtMm), loadN, dialFromTailMm (or dialAtMm), deflectionMm in its first\n' +
    'line, and may name rearSupportMm and frontSupportMm (the contact points unless given). --contact-length MM is needed.',
  files: [1, 1],
  async run({ files: [file], options, read }) {
    const lengthMm = oneNumber(options, 'contact-length', CONTACT_LENGTH);
    if (lengthMm === null) {
      const { unit, from, to } = CONTACT_LENGTH;
      throw new InputFault(`--contact-length: is missing; give the contact length, ${from} to ${to} ${unit}`);
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
      tables: [{ title: `Bending stiffness from ${readings.length} readings`, ...table }],
      csv: table,
      words: [
        `Left unexplained: ${Number((found.residual / MM).toPrecision(2))} mm.`,
        ...found.notes.map(inWords),
      ].join('\n'),
      workings: [],
    };
  },
};
