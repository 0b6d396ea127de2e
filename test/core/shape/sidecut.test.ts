import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ski } from '../../../core/pair/index.ts';
import { arcHeight, edgeCurve, localRadius, sidecut } from '../../../core/shape/index.ts';
import { reversed, skiWith } from './ski.ts';

const anySki = fc
  .record({
    contactLength: fc.double({ min: 0.9, max: 1.9, noNaN: true }),
    waistWidth: fc.double({ min: 0.055, max: 0.1, noNaN: true }),
    tip: fc.double({ min: 0.015, max: 0.06, noNaN: true }),
    tail: fc.double({ min: 0.01, max: 0.05, noNaN: true }),
    waistAt: fc.option(fc.double({ min: 0.35, max: 0.6, noNaN: true })),
  })
  .map(({ contactLength, waistWidth, tip, tail, waistAt }) =>
    skiWith({
      contactLength,
      waistWidth,
      tipWidth: waistWidth + tip,
      tailWidth: waistWidth + tail,
      waistStation: waistAt === null ? null : waistAt * contactLength,
    }),
  );

const stretched = (ski: Ski, by: number): Ski => ({
  ...ski,
  contactLength: ski.contactLength * by,
  waistStation: ski.waistStation === null ? null : ski.waistStation * by,
});

/** Stations of a true arc whose waist is at `waist`, with an error in each width. */
function arcStations(radius: number, waist: number, at: readonly number[], error: (i: number) => number) {
  return at.map((x, i) => {
    const rise = radius - Math.sqrt(radius ** 2 - (x - waist) ** 2);
    return { x, width: 0.066 + 2 * rise + error(i) };
  });
}

describe('sidecut from three widths', () => {
  it('grows with the square of the length', () => {
    fc.assert(
      fc.property(anySki, fc.double({ min: 0.6, max: 1.6, noNaN: true }), (ski, by) => {
        expect(sidecut(stretched(ski, by)).radius / sidecut(ski).radius).toBeCloseTo(by ** 2, 9);
      }),
    );
  });

  it('halves when all width differences double, whatever the waist', () => {
    fc.assert(
      fc.property(anySki, fc.double({ min: -0.02, max: 0.02, noNaN: true }), (ski, wider) => {
        const { waistWidth: w } = ski;
        const waistWidth = w + wider;
        const doubled = {
          ...ski,
          waistWidth,
          tipWidth: waistWidth + 2 * (ski.tipWidth - w),
          tailWidth: waistWidth + 2 * (ski.tailWidth - w),
        };
        expect(sidecut(ski).radius / sidecut(doubled).radius).toBeCloseTo(2, 9);
      }),
    );
  });

  it('is the same from either end, with the taper turned round', () => {
    fc.assert(
      fc.property(anySki, ski => {
        const one = sidecut(ski);
        const other = sidecut(reversed(ski));
        for (const key of ['depth', 'radius', 'radiusUncertainty', 'circleRadius', 'fittedRadius'] as const) {
          expect(other[key] / one[key]).toBeCloseTo(1, 9);
        }
        expect(other.taper).toBeCloseTo(-one.taper, 12);
        expect(other.waistStation).toBeCloseTo(ski.contactLength - one.waistStation, 9);
      }),
    );
  });

  it('passes through the three widths and has its waist where the edge runs parallel to the midline', () => {
    fc.assert(
      fc.property(anySki, ski => {
        const edge = edgeCurve(ski);
        const { waistStation } = sidecut(ski);
        expect(edge.halfWidth(0)).toBeCloseTo(ski.tailWidth / 2, 12);
        expect(edge.halfWidth(ski.contactLength)).toBeCloseTo(ski.tipWidth / 2, 12);
        expect(edge.halfWidth(ski.waistStation ?? ski.contactLength / 2)).toBeCloseTo(ski.waistWidth / 2, 12);
        expect(edge.slope(waistStation)).toBeCloseTo(0, 9);
      }),
    );
  });

  it('differs from the exact circle by half the depth when the ends are equal', () => {
    const cut = sidecut(skiWith({ tipWidth: 0.104, tailWidth: 0.104 }));
    expect(cut.circleRadius - cut.radius).toBeCloseTo(cut.depth / 2, 9);
    expect(cut.taper).toBeCloseTo(0, 12);
    expect(cut.waistStation).toBeCloseTo(0.7, 9);
    expect(cut.local).toHaveLength(101);
    expect(cut.local[50].radius).toBeCloseTo(cut.radius, 9);
  });

  it('says what the radius rests on', () => {
    expect(sidecut(skiWith({}))).toMatchObject({
      lengthSource: 'contact length',
      waistSource: 'waist taken midway',
    });
    expect(sidecut(skiWith({ waistStation: 0.66 })).waistSource).toBe('measured waist station');
  });

  it('has the scatter its uncertainty announces', () => {
    const ski = skiWith({ waistStation: 0.62 });
    const { radius, radiusUncertainty } = sidecut(ski);
    // Errors of the announced size from a fixed sequence of near-normal deviates.
    let state = 7;
    const uniform = () => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const runs = 1500;
    let squares = 0;
    for (let i = 0; i < runs; i += 1) {
      const by = 1 + (normal() * 1e-3) / ski.contactLength;
      const measured = stretched(
        {
          ...ski,
          tipWidth: ski.tipWidth + normal() * 0.25e-3,
          waistWidth: ski.waistWidth + normal() * 0.25e-3,
          tailWidth: ski.tailWidth + normal() * 0.25e-3,
        },
        by,
      );
      squares += (sidecut(measured).radius - radius) ** 2;
    }
    expect(Math.sqrt(squares / runs) / radiusUncertainty).toBeGreaterThan(0.93);
    expect(Math.sqrt(squares / runs) / radiusUncertainty).toBeLessThan(1.07);
  });
});

describe('sidecut from width stations', () => {
  const at = [0, 0.15, 0.3, 0.5, 0.65, 0.8, 1, 1.2, 1.4];

  it('finds the radius of a true arc and where its waist is', () => {
    const cut = sidecut(skiWith({ widthStations: arcStations(13, 0.63, at, () => 0) }));
    expect(cut.fittedRadius).toBeCloseTo(13, 6);
    expect(cut.waistStation).toBeCloseTo(0.63, 2);
    expect(cut.circleRadius).toBeCloseTo(13, 1);
    expect(cut).toMatchObject({ widthSource: 'width stations', waistSource: 'width stations' });
    const ends = [cut.local[0].radius, cut.local[100].radius];
    for (const end of ends) expect(Math.abs(end / 13 - 1)).toBeLessThan(0.02);
  });

  it('does not read radius changes into errors of the size of the measuring uncertainty', () => {
    const error = (i: number) => (i % 2 === 0 ? 0.2e-3 : -0.2e-3);
    const cut = sidecut(skiWith({ widthStations: arcStations(13, 0.63, at, error) }));
    for (const { radius } of cut.local) expect(Math.abs(radius / 13 - 1)).toBeLessThan(0.08);
    expect(Math.abs(cut.fittedRadius - 13)).toBeLessThan(2.5 * cut.radiusUncertainty);
  });

  it('sees a radius that really changes along the edge', () => {
    // 18 m behind the waist and 12 m ahead of it: half width from two arcs that meet at the waist.
    const stations = Array.from({ length: 29 }, (_, i) => {
      const x = i * 0.05;
      const radius = x < 0.65 ? 18 : 12;
      return { x, width: 0.066 + (x - 0.65) ** 2 / radius };
    });
    const ski = skiWith({ widthStations: stations });
    const edge = edgeCurve(ski, { uWidth: 0.02e-3 });
    expect(Math.abs(localRadius(edge, 0.3) / 18 - 1)).toBeLessThan(0.1);
    expect(Math.abs(localRadius(edge, 1.05) / 12 - 1)).toBeLessThan(0.1);
  });

  it('is the same from either end', () => {
    const ski = skiWith({ widthStations: arcStations(15, 0.6, at, i => 0.3e-3 * Math.sin(3 * i)) });
    const one = sidecut(ski);
    const other = sidecut(reversed(ski));
    expect(other.radius).toBeCloseTo(one.radius, 8);
    expect(other.fittedRadius).toBeCloseTo(one.fittedRadius, 8);
    expect(other.local[30].radius).toBeCloseTo(one.local[70].radius, 5);
  });

  it('has derivatives that agree with its widths', () => {
    const edge = edgeCurve(skiWith({ widthStations: arcStations(13, 0.6, at, i => 1e-3 * Math.sin(2 * i)) }));
    const h = 1e-5;
    for (const x of [0.05, 0.31, 0.7, 1.1, 1.37]) {
      expect((edge.halfWidth(x + h) - edge.halfWidth(x - h)) / (2 * h)).toBeCloseTo(edge.slope(x), 7);
      expect((edge.slope(x + h) - edge.slope(x - h)) / (2 * h)).toBeCloseTo(edge.curvature(x), 5);
    }
  });
});

describe('arc height', () => {
  it('is that of the exact circle', () => {
    expect(13 - Math.sqrt(13 ** 2 - 0.7 ** 2)).toBeCloseTo(arcHeight(1.4, 13), 12);
  });
});
