import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import {
  decimalsFor,
  formatQuantity,
  type MeasureName,
  measures,
  parseQuantity,
  shownAs,
} from '../../../core/units/index.ts';

const names = Object.keys(measures) as MeasureName[];

describe('formatQuantity', () => {
  it('shows as many digits as the uncertainty supports', () => {
    expect(formatQuantity(12.1829, 'radius', { uncertainty: 0.097 }).text).toBe('12.18 ± 0.10\u00a0m');
    expect(formatQuantity(30.539, 'radius', { uncertainty: 0.42 }).text).toBe('30.5 ± 0.4\u00a0m');
    expect(formatQuantity(30.539, 'radius', { uncertainty: 3 }).text).toBe('31 ± 3\u00a0m');
  });

  it('converts for display only', () => {
    expect(formatQuantity(0.0665, 'width').text).toBe('66.5\u00a0mm');
    expect(formatQuantity(0.0254, 'width', { system: 'imperial' }).text).toBe('1.000\u00a0in');
    expect(formatQuantity(Math.PI / 4, 'angle').text).toBe('45.0°');
    expect(formatQuantity(10, 'speed').text).toBe('36.0\u00a0km/h');
  });

  it('writes a true minus sign, no minus zero, and a dash for what is no number', () => {
    expect(formatQuantity(-0.0012, 'deflection').value).toBe('\u22121.20');
    expect(formatQuantity(-1e-9, 'deflection').value).toBe('0.00');
    expect(formatQuantity(Number.NaN, 'radius').text).toBe('–');
  });
});

describe('decimalsFor', () => {
  it('keeps one figure of the uncertainty, two when it starts with 1', () => {
    expect([0.1, 0.19, 0.2, 0.97, 1, 1.9, 2, 25].map(decimalsFor)).toEqual([2, 2, 1, 1, 1, 1, 0, 0]);
  });
});

describe('parseQuantity', () => {
  it('reads a bare number in the unit on screen and any unit of its kind', () => {
    expect(parseQuantity('165 cm', 'lengthMm')).toEqual({ ok: true, value: 1650 });
    expect(parseQuantity('66,5', 'widthMm')).toEqual({ ok: true, value: 66.5 });
    expect(parseQuantity('1 in', 'widthMm')).toEqual({ ok: true, value: 25.4 });
    expect(parseQuantity('10 m/s', 'speedKmh')).toMatchObject({ ok: true, value: expect.closeTo(36, 9) });
    expect(parseQuantity('45', 'angle')).toMatchObject({ ok: true, value: expect.closeTo(Math.PI / 4, 12) });
  });

  it('says what was found and what is accepted', () => {
    const wrongUnit = parseQuantity('3 kg', 'widthMm');
    expect(wrongUnit).toMatchObject({ ok: false });
    expect(!wrongUnit.ok && say({ field: 'tip', ...wrongUnit })).toMatch(/"kg" is not accepted; .*mm/);
    const noNumber = parseQuantity('wide', 'widthMm');
    expect(!noNumber.ok && say({ field: 'tip', ...noNumber })).toMatch(/"wide" is not .*a number in mm/);
  });

  it('reads back what is shown, in every measure and both systems', () => {
    const held = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.constantFrom('metric', 'imperial'),
        held,
        (name, system, value) => {
          const { factor, unit } = shownAs(name, system);
          const read = parseQuantity(`${value * factor} ${unit}`, name, system);
          expect(read.ok && read.value / value).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});
