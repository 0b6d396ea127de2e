import { expect, test } from 'vitest';
import { parseQuantity as parseSi, type QuantityKind } from '../../../core/units/index.ts';
import { type MeasureName, measures, parseQuantity } from '../../../renderer/format/index.ts';

/** The measures whose units the unit library of core knows, and what they are the size of. */
const KINDS: Partial<Record<MeasureName, QuantityKind>> = {
  width: 'length',
  station: 'length',
  deflection: 'length',
  skiLength: 'length',
  radius: 'length',
  distance: 'length',
  angle: 'angle',
  speed: 'speed',
  force: 'force',
  spring: 'spring',
  lineLoad: 'spring',
  stiffness: 'stiffness',
  mass: 'mass',
  hardness: 'hardness',
  time: 'time',
  widthMm: 'length',
  stationMm: 'length',
  lengthMm: 'length',
  angleDeg: 'angle',
  speedKmh: 'speed',
  hardnessNPerMm3: 'hardness',
  massKg: 'mass',
};

/** The SI size of one of a unit, from the library's own table of units. */
function sizeOf(unit: string, kind: QuantityKind): number {
  const read = parseSi(`1 ${unit}`, kind);
  if (!read.ok) throw new Error(read.message);
  return read.value;
}

test.each(Object.entries(KINDS) as [MeasureName, QuantityKind][])(
  '%s is shown in units of the size the unit library gives them',
  (name, kind) => {
    const { metric, imperial } = measures[name];
    const inMetric = metric.factor * sizeOf(metric.unit, kind);
    const inImperial = imperial.factor * sizeOf(imperial.unit, kind);
    expect(inImperial / inMetric).toBeCloseTo(1, 9);
    for (const shown of [metric, imperial]) {
      // What is typed with its unit comes back in the unit held, whichever system is on screen.
      const typed = parseQuantity(`2 ${shown.unit}`, name, 'metric');
      expect(typed.ok && typed.value * shown.factor).toBeCloseTo(2, 9);
    }
  },
);
