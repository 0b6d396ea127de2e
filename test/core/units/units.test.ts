import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatQuantity,
  parseLength,
  parseQuantity,
  placesFor,
  type QuantityKind,
} from '../../../core/units/index.ts';

describe('reading a quantity', () => {
  it.each<[string, QuantityKind, number]>([
    ['165 cm', 'length', 1.65],
    ['1.65 m', 'length', 1.65],
    ['1,65 m', 'length', 1.65],
    ['66mm', 'length', 0.066],
    ['0.5 in', 'length', 0.0127],
    ['26"', 'length', 0.6604],
    ['6 ft', 'length', 1.8288],
    ['12 deg', 'angle', Math.PI / 15],
    ['12°', 'angle', Math.PI / 15],
    ['−3,5°', 'angle', (-3.5 * Math.PI) / 180],
    ['0.2 rad', 'angle', 0.2],
    ['1.2 kN', 'force', 1200],
    ['10 lbf', 'force', 44.482216152605],
    ['10 kgf', 'force', 98.0665],
    ['2300 g', 'mass', 2.3],
    ['5 lbs', 'mass', 2.26796185],
    ['54 km/h', 'speed', 15],
    ['30 mph', 'speed', 13.4112],
    ['300 N·m²', 'stiffness', 300],
    ['300 N*m^2', 'stiffness', 300],
    ['5 N/mm', 'spring', 5000],
    ['1 N/mm³', 'hardness', 1e9],
    ['2 min', 'time', 120],
  ])('%s', (text, kind, value) => {
    const read = parseQuantity(text, kind);
    if (!read.ok) throw new Error(read.message);
    expect(read.value / value).toBeCloseTo(1, 12);
  });

  it.each([
    '',
    'cm',
    '165',
    '165 kg',
    '1.650,5 m',
    '1e400 m',
    '5 m + 2 m',
    '2 2 m',
    '1 {x}',
    '5 constructor',
  ])('%o is refused with what is accepted', text => {
    const read = parseLength(text);
    expect(read).toEqual({
      ok: false,
      message: expect.stringContaining('accepted is a length such as 165 cm'),
    });
  });

  it('takes a bare number only where a unit is agreed', () => {
    expect(parseLength('1360', { bare: 'mm' })).toEqual({ ok: true, value: expect.closeTo(1.36, 12) });
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string(), fc.string({ maxLength: 6 }), (before, after) => {
        for (const text of [before, `3 ${after}`]) {
          const read = parseLength(text);
          if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
        }
      }),
    );
  });
});

describe('showing a quantity', () => {
  it('keeps the digits its uncertainty supports', () => {
    expect(formatQuantity(12.1837, 'm', { uncertainty: 0.186 })).toBe('12.18 ± 0.19\u00a0m');
    expect(formatQuantity(30.5391, 'm', { uncertainty: 0.43 })).toBe('30.5 ± 0.4\u00a0m');
    expect(formatQuantity(1234, 'N', { uncertainty: 34 })).toBe('1230 ± 30\u00a0N');
    expect(formatQuantity(0.21, 'deg', { uncertainty: 0.01 })).toBe('(12.0 ± 0.6)°');
  });

  it('has a usual number of decimals without one, and an imperial form', () => {
    expect(formatQuantity(0.066, 'mm')).toBe('66.0\u00a0mm');
    expect(formatQuantity(0.066, 'mm', { system: 'imperial' })).toBe('2.598\u00a0in');
    expect(formatQuantity(15, 'km/h')).toBe('54.0\u00a0km/h');
    expect(formatQuantity(13.4112, 'km/h', { system: 'imperial' })).toBe('30.0\u00a0mph');
    expect(formatQuantity(-0.002, 'mm')).toBe('−2.0\u00a0mm');
    expect(formatQuantity(-1e-9, 'mm')).toBe('0.0\u00a0mm');
    expect(formatQuantity(Number.POSITIVE_INFINITY, 'm')).toBe('–');
  });

  it('shows one figure of an uncertainty, two when it begins with 1', () => {
    expect([0.019, 0.02, 0.3, 1.4, 6, 14, 60].map(placesFor)).toEqual([3, 2, 1, 1, 0, 0, -1]);
  });

  it('reads back what it shows', () => {
    const kinds: [string, 'mm' | 'm' | 'N' | 'kg' | 'km/h' | 'deg', QuantityKind][] = [
      ['a', 'mm', 'length'],
      ['b', 'm', 'length'],
      ['c', 'N', 'force'],
      ['d', 'kg', 'mass'],
      ['e', 'km/h', 'speed'],
      ['f', 'deg', 'angle'],
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.integer({ min: 1, max: 9999 }),
        fc.boolean(),
        ([, unit, kind], n, us) => {
          const system = us ? 'imperial' : 'metric';
          const text = formatQuantity(n, unit, { system });
          const read = parseQuantity(text, kind);
          if (!read.ok) throw new Error(read.message);
          expect(formatQuantity(read.value, unit, { system })).toBe(text);
        },
      ),
    );
  });
});
