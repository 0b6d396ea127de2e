import fc from 'fast-check';
import { create, UnitDependencies } from 'mathjs';
import { describe, expect, it, test } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { type MeasureName, measures, parseQuantity, readIn, spellingsOf } from '../../../core/units/index.ts';

const { Unit } = create({ UnitDependencies }, {});

/** A spelling of ours in the words of the library's own table of units. */
const inItsWords = (unit: string) =>
  unit
    .replace('°', 'deg')
    .replaceAll('²', '^2')
    .replaceAll('³', '^3')
    .replaceAll('·', ' ')
    .replace('mph', 'mi/h')
    // The library rounds its own psi in the eleventh figure.
    .replace('psi', 'lbf/in^2');

const SI = {
  length: 'm',
  area: 'm^2',
  angle: 'rad',
  speed: 'm/s',
  force: 'N',
  mass: 'kg',
  massPerLength: 'kg/m',
  density: 'kg/m^3',
  modulus: 'Pa',
  moment: 'N m',
  stiffness: 'N m^2',
  spring: 'N/m',
  hardness: 'N/m^3',
  time: 's',
  frequency: 'Hz',
  energy: 'J',
} as const;

describe('the table of units', () => {
  test.each(Object.entries(SI).flatMap(([kind, si]) => spellingsOf(kind).map(unit => [unit, si] as const)))(
    'holds %s in the size an independent table gives it in %s',
    (unit, si) => {
      const read = readIn(`1 ${unit}`, si.replace(' ', '·').replace('^2', '²').replace('^3', '³'));
      expect(read.ok && read.value / new Unit(1, inItsWords(unit)).toNumber(si)).toBeCloseTo(1, 12);
    },
  );

  it('gives every measure a unit it can read back', () => {
    for (const name of Object.keys(measures) as MeasureName[]) {
      for (const system of ['metric', 'imperial'] as const) {
        const { unit, factor } = measures[name][system];
        const read = parseQuantity(`2 ${unit}`, name, system);
        expect(read.ok && read.value * factor).toBeCloseTo(2, 9);
      }
    }
  });
});

describe('reading a quantity', () => {
  it.each<[string, string, number]>([
    ['165 cm', 'm', 1.65],
    ['1,65 m', 'mm', 1650],
    ['66mm', 'm', 0.066],
    ['26"', 'in', 26],
    ['6 ft', 'm', 1.8288],
    ['12 deg', 'degrees', 12],
    ['−3,5°', 'degrees', -3.5],
    ['0.2 rad', 'rad', 0.2],
    ['1.2 kN', 'N', 1200],
    ['10 kgf', 'N', 98.0665],
    ['5 lbs', 'kg', 2.26796185],
    ['54 km/h', 'm/s', 15],
    ['30 mph', 'm/s', 13.4112],
    ['300 N*m^2', 'N·m²', 300],
    ['5 N/mm', 'N/m', 5000],
    ['1 N/mm³', 'N/m³', 1e9],
    ['70000 MPa', 'GPa', 70],
    ['7850 kg/m³', 'g/cm³', 7.85],
    ['2 min', 's', 120],
    ['1360', 'mm', 1360],
    ['8', 'turns', 8],
  ])('%s in %s', (text, unit, value) => {
    const read = readIn(text, unit);
    if (!read.ok) throw new Error(JSON.stringify(read));
    expect(read.value / value).toBeCloseTo(1, 12);
  });

  it.each([
    '',
    'cm',
    '165 kg',
    '1.650,5 m',
    '1e400 m',
    '1e308 m',
    '5 m + 2 m',
    '2 2 m',
    '1 {x}',
    '5 constructor',
    '1 __proto__',
  ])('%o is refused with what is accepted', text => {
    const read = readIn(text, 'mm');
    expect(read.ok ? '' : say({ field: 'tip', ...read })).toContain('accepted is a number in mm');
  });

  it.each(['', '  '])('%o is told as nothing', text => {
    expect(readIn(text, 'mm')).toMatchObject({ ok: false, found: undefined });
  });

  it('names the other units of the kind, without their many spellings', () => {
    const read = readIn('3 kg', 'mm');
    expect(read.ok ? '' : say({ field: 'tip', ...read })).toBe(
      'tip: unit "kg" is not accepted; accepted is a number in mm (or cm, m, in, ft)',
    );
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string(), fc.string({ maxLength: 6 }), (before, after) => {
        for (const text of [before, `3 ${after}`]) {
          const read = readIn(text, 'm');
          if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
        }
      }),
    );
  });
});
