import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bootAnswer,
  bootLever,
  bootMoment,
  edgeAngleLost,
  freeAngulation,
  pushOf,
} from '../../../core/boot/index.ts';

const DEGREE = Math.PI / 180;
const metres = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
const edges = fc.record({ aside: metres(0.02, 0.06), below: metres(0.03, 0.2) });

describe('the lever of the edge under the foot', () => {
  it('is half the waist without angulation, and changes sign at the free angulation', () => {
    fc.assert(
      fc.property(edges, metres(0.001, 0.5), (edge, off) => {
        expect(bootLever(edge, 0)).toBeCloseTo(edge.aside, 15);
        const free = freeAngulation(edge);
        expect(bootLever(edge, free)).toBeCloseTo(0, 15);
        expect(bootLever(edge, free - off)).toBeGreaterThan(0);
        expect(bootLever(edge, free + off)).toBeLessThan(0);
      }),
    );
  });

  it('needs less angulation with more height, and more with a wider waist', () => {
    fc.assert(
      fc.property(edges, metres(0.001, 0.02), (edge, more) => {
        const free = freeAngulation(edge);
        expect(freeAngulation({ ...edge, below: edge.below + more })).toBeLessThan(free);
        expect(freeAngulation({ ...edge, aside: edge.aside + more })).toBeGreaterThan(free);
      }),
    );
  });

  it('gives the boot a moment in proportion to the load', () => {
    const edge = { aside: 0.033, below: 0.093 };
    expect(bootMoment(1200, edge, 0)).toBeCloseTo(39.6, 12);
    expect(bootMoment(2400, edge, 10 * DEGREE)).toBeCloseTo(2 * bootMoment(1200, edge, 10 * DEGREE), 12);
  });
});

describe('the edge angle lost in the boot', () => {
  it('is the moment over the stiffness, and gained where the moment tips the ski', () => {
    expect(edgeAngleLost(40, 20 / DEGREE) / DEGREE).toBeCloseTo(2, 12);
    expect(edgeAngleLost(-10, 20 / DEGREE) / DEGREE).toBeCloseTo(-0.5, 12);
  });

  it.each([0, -3, Number.NaN])('refuses a stiffness of %d by name', stiffness => {
    expect(() => edgeAngleLost(40, stiffness)).toThrow(expect.objectContaining({ field: 'stiffness' }));
  });
});

describe("the snow's push", () => {
  it('has the load as its part normal to the base', () => {
    expect(pushOf(1200, 0)).toBe(1200);
    expect(pushOf(1200, 30 * DEGREE) * Math.cos(30 * DEGREE)).toBeCloseTo(1200, 10);
  });

  it('cannot lie in the base', () => {
    expect(() => pushOf(1200, 95 * DEGREE)).toThrow(expect.objectContaining({ field: 'angulation' }));
  });
});

describe('what the boot carries', () => {
  const question = {
    normal: 1200,
    edgeAngle: 60 * DEGREE,
    lean: 40 * DEGREE,
    halfWaist: 0.033,
    standingHeight: 0.05,
    bootSoleHeight: 0.043,
    heightsStated: true,
    stiffness: 20 / DEGREE,
    centre: null,
  };

  it('is told by the waist alone while no groove is solved', () => {
    const answer = bootAnswer(question);
    expect(answer.angulation / DEGREE).toBeCloseTo(20, 12);
    expect(answer.moment).toBeCloseTo(1200 * (0.033 - 0.093 * Math.tan(20 * DEGREE)), 10);
    expect(answer.solvedMoment).toBeNull();
    expect(answer.solvedFreeAngulation).toBeNull();
    expect(answer.edgeAngleLost).toBeCloseTo(answer.moment / question.stiffness, 15);
  });

  it('follows the solved pressure where there is one', () => {
    const answer = bootAnswer({ ...question, centre: { aside: 0.041, rise: 0.02 } });
    const by = 1200 * (0.041 - 0.073 * Math.tan(20 * DEGREE));
    expect(answer.solvedMoment).toBeCloseTo(by, 10);
    expect(answer.solvedFreeAngulation).toBeCloseTo(Math.atan(0.041 / 0.073), 12);
    expect(answer.edgeAngleLost).toBeCloseTo(by / question.stiffness, 15);
  });

  it('is the same at the waist whether or not the pressure is solved', () => {
    const atWaist = bootAnswer({ ...question, centre: { aside: 0.033, rise: 0 } });
    expect(atWaist.solvedMoment).toBe(atWaist.moment);
  });
});
