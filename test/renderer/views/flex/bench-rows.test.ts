import { describe, expect, test } from 'vitest';
import { identify, readBenchTable } from '../../../../core/flex/index.ts';
import { say } from '../../../../core/language/index.ts';
import { exampleRows } from '../../../../renderer/views/flex/bench-rows.ts';

const LENGTH = 1.4;

describe('bench readings', () => {
  test('a missing column and a bad number are named with line, column and what was found', () => {
    const missing = readBenchTable('loadFromTailMm,loadN,deflectionMm\n1,2,3\n', LENGTH);
    expect(missing.ok ? '' : say(missing.fault)).toBe(
      'line 1, dialFromTailMm: is missing; accepted is a first line that names loadFromTailMm, loadN, dialFromTailMm, deflectionMm',
    );
    const bad = readBenchTable('loadFromTailMm,loadN,dialFromTailMm,deflectionMm\n300,much,300,5\n', LENGTH);
    expect(bad.ok ? '' : say(bad.fault)).toBe(
      'line 2, loadN: "much" is not accepted; accepted is a number in N (or kN, lbf, kgf)',
    );
  });

  test('made-up readings of a uniform ski are explained by its stiffness', () => {
    const read = readBenchTable(
      exampleRows(() => 200, LENGTH),
      LENGTH,
    );
    if (!read.ok) throw new Error(read.fault.field);
    const { stations } = identify(read.readings, { length: LENGTH });
    expect(stations[Math.floor(stations.length / 2)].newtonM2 / 200).toBeCloseTo(1, 1);
  });
});
