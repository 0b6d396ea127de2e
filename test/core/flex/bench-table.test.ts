import { describe, expect, test } from 'vitest';
import { namesBenchReadings, readBenchTable } from '../../../core/flex/index.ts';

const LENGTH = 1.4;

describe('a table of bench readings', () => {
  test('rows become readings in SI, on the contact points without support columns', () => {
    const read = readBenchTable('loadAtMm;loadN;dialAtMm;deflectionMm\n300;100;350;5,31\n', LENGTH);
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
    const read = readBenchTable(text, LENGTH);
    expect(read.ok && read.readings[0]).toMatchObject({ rear: 0.05, front: 1.35 });
  });

  test('the first cell or column at fault is named with its line, what was found and what is accepted', () => {
    expect(readBenchTable('loadFromTailMm,loadN,deflectionMm\n1,2,3\n', LENGTH)).toEqual({
      ok: false,
      fault: {
        where: { line: 1 },
        field: 'dialFromTailMm',
        found: undefined,
        accepted: {
          key: 'flex.benchHeadings',
          values: { names: ['loadFromTailMm', 'loadN', 'dialFromTailMm', 'deflectionMm'] },
        },
      },
    });
    const bad = readBenchTable('loadAtMm,loadN,dialAtMm,deflectionMm\n300,100,300,5\n300,,300,5\n', LENGTH);
    expect(bad).toEqual({
      ok: false,
      fault: { where: { line: 3 }, field: 'loadN', found: undefined, accepted: {} },
    });
  });

  test('is known by its headings', () => {
    expect(namesBenchReadings(['loadAtMm', ' LoadN', 'dialAtMm', 'deflectionmm'])).toBe(true);
    expect(namesBenchReadings(['name', 'length', 'loadN'])).toBe(false);
  });
});
