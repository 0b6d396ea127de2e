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
      fault: {
        where: { line: 3 },
        field: 'loadN',
        found: undefined,
        accepted: expect.objectContaining({ values: expect.objectContaining({ unit: 'N' }) }),
      },
    });
  });

  test('is known by its headings', () => {
    expect(namesBenchReadings(['loadAtMm', ' LoadN', 'dialAtMm', 'deflectionmm'])).toBe(true);
    expect(namesBenchReadings(['name', 'length', 'loadN'])).toBe(false);
  });

  test('cells carry their units, and another dimension is refused by line and unit', () => {
    const table = (row: string) => readBenchTable(`loadAtMm;loadN;dialAtMm;deflectionMm\n${row}\n`, LENGTH);
    const read = table('30 cm;0.1 kN;0.35 m;2.03 cm');
    expect(read.ok && read.readings[0]).toMatchObject({
      loadAt: expect.closeTo(0.3, 12),
      load: expect.closeTo(100, 9),
      dialAt: expect.closeTo(0.35, 12),
      deflection: expect.closeTo(0.0203, 12),
    });
    expect(table('300;15.3 kg;350;5')).toMatchObject({
      ok: false,
      fault: { where: { line: 2 }, field: 'loadN', found: { values: { unit: '"kg"' } } },
    });
    expect(table('300;153;350;5 N')).toMatchObject({ ok: false, fault: { field: 'deflectionMm' } });
  });
});
