import { describe, expect, test } from 'vitest';
import { identify } from '../../../../core/flex/index.ts';
import { exampleRows, readBenchRows } from '../../../../renderer/views/flex/bench-rows.ts';

const LENGTH = 1.4;

describe('bench readings', () => {
  test('rows become readings in SI, on the contact points without support columns', () => {
    const read = readBenchRows('loadAtMm;loadN;dialAtMm;deflectionMm\n300;100;350;5,31\n', LENGTH);
    expect(read).toEqual({
      ok: true,
      readings: [
        {
          loadAt: 0.3,
          load: 100,
          dialAt: expect.closeTo(0.35, 9),
          deflection: expect.closeTo(0.00531, 9),
          rear: 0,
          front: LENGTH,
        },
      ],
    });
  });

  test('support columns are taken', () => {
    const text =
      'loadFromTailMm,loadN,dialFromTailMm,deflectionMm,rearSupportMm,frontSupportMm\n300,100,300,5,50,1350\n';
    const read = readBenchRows(text, LENGTH);
    expect(read.ok && read.readings[0]).toMatchObject({ rear: 0.05, front: 1.35 });
  });

  test('a missing column and a bad number are named with line, column and what was found', () => {
    const missing = readBenchRows('loadFromTailMm,loadN,deflectionMm\n1,2,3\n', LENGTH);
    expect(missing.ok ? '' : missing.problem).toContain('dialFromTailMm');
    const bad = readBenchRows('loadFromTailMm,loadN,dialFromTailMm,deflectionMm\n300,much,300,5\n', LENGTH);
    expect(bad.ok ? '' : bad.problem).toBe('Line 2, loadN: "much" found; a number is accepted.');
  });

  test('made-up readings of a uniform ski are explained by its stiffness', () => {
    const read = readBenchRows(
      exampleRows(() => 200, LENGTH),
      LENGTH,
    );
    if (!read.ok) throw new Error(read.problem);
    const { stations } = identify(read.readings, { length: LENGTH });
    expect(stations[Math.floor(stations.length / 2)].newtonM2 / 200).toBeCloseTo(1, 1);
  });
});
