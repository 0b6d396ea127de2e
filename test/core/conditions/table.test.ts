import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  acceptConditions,
  CONDITIONS,
  type Field,
  factorOf,
  faultIn,
  fieldsOf,
  inSi,
  isAccepted,
  reachOf,
  rowOf,
  saidOf,
  siOf,
  USUAL,
  unitSaid,
} from '../../../core/conditions/index.ts';
import { FieldError } from '../../../core/fault/index.ts';
import { say } from '../../../core/language/index.ts';
import { measures } from '../../../core/units/index.ts';

const fields = Object.keys(CONDITIONS) as Field[];

describe('the table of conditions', () => {
  test.each(fields)('%s: usual value and reach lie within what is accepted', field => {
    const { least, most, usual, step, whole } = rowOf(field);
    const [low, high] = reachOf(field);
    expect(least).toBeLessThan(most);
    expect(low).toBeGreaterThanOrEqual(least);
    expect(high).toBeLessThanOrEqual(most);
    expect(low).toBeLessThan(high);
    if (usual !== null) {
      expect(usual).toBeGreaterThanOrEqual(low);
      expect(usual).toBeLessThanOrEqual(high);
      expect(isAccepted(field, usual)).toBe(true);
    }
    if (step !== undefined) expect(step).toBeLessThan(high - low);
    // A control without a step is logarithmic, and no logarithm begins at 0.
    else expect(low).toBeGreaterThan(0);
    if (whole) expect(Number.isInteger(usual)).toBe(true);
  });

  test.each(fields)('%s is held in the unit its measure shows', field => {
    const { measure } = rowOf(field);
    expect(measures[measure].metric.factor).toBe(1);
    expect(measures[measure].metric.unit).toBe(unitSaid(field));
  });

  test('one name in SI means one thing to whoever takes a group', () => {
    for (const group of new Set(fields.map(field => rowOf(field).group))) {
      const names = fields.filter(field => rowOf(field).group === group).map(field => rowOf(field).si);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  test('is said in people’s units and computed in SI', () => {
    expect(inSi(USUAL, ['hardnessNPerMm3', 'reboundMm', 'speedKmh', 'edgeDeg', 'massKg'])).toEqual({
      hardness: 1e9,
      rebound: 0.2e-3,
      startSpeed: 20 / 3.6,
      edgeAngle: (50 * Math.PI) / 180,
      mass: 48,
    });
    expect(factorOf('pushBodyWeights')).toBe(1);
    expect(inSi({ massKg: 60 }, ['massKg', 'heightM'])).toEqual({ mass: 60 });
  });

  test('there and back is the number that was said', () => {
    fc.assert(
      fc.property(fc.constantFrom(...fields), fc.integer({ min: 0, max: 1000 }), (field, thousandth) => {
        const { least, most } = rowOf(field);
        const said = Number((least + (thousandth / 1000) * (most - least)).toPrecision(6));
        expect(saidOf(field, siOf(field, said))).toBe(said);
      }),
    );
  });

  test('what is out of range is named with what was found and what is accepted, as it is said', () => {
    fc.assert(
      fc.property(fc.constantFrom(...fields), fc.boolean(), (field, above) => {
        const { si, least, most } = rowOf(field);
        const beyond = above ? most + 0.01 * (most - least) : least - 0.01 * (most - least);
        expect(faultIn({ [si]: siOf(field, least) }, [field])).toBeNull();
        expect(faultIn({ [si]: siOf(field, most) }, [field])).toBeNull();
        expect(faultIn({ [si]: siOf(field, beyond) }, [field])).toMatchObject({
          field: si,
          accepted: { from: least, to: most },
        });
        expect(isAccepted(field, beyond)).toBe(false);
      }),
    );
    const reported = (given: object, ...of: Field[]) => say(faultIn(given, of)!);
    expect(reported({ slope: 1.2 }, 'slopeDeg')).toBe(
      'slope: 68.8° is not accepted; accepted is a number from 0.0 to 60.0°',
    );
    expect(reported({ turns: 2.5 }, 'turns')).toContain('a whole number from 1 to 200');
    expect(faultIn({ mass: Number.NaN }, fieldsOf('body'))?.field).toBe('mass');
    expect(() => acceptConditions({ mass: 5 }, ['massKg'])).toThrow(FieldError);
  });
});
