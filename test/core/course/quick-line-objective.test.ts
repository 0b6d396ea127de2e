import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { splineBasis, splineRow } from '../../../core/course/cubic-b-spline.ts';
import { fillCourseConditions } from '../../../core/course/gate-conditions.ts';
import { descend } from '../../../core/course/limited-memory-descent.ts';
import { QuickLineObjective } from '../../../core/course/quick-line-objective.ts';
import { pathPhysics } from '../../../core/course/timed-path.ts';

describe('splineRow', () => {
  it('sums to one, and its slopes are those of its values', () => {
    const basis = splineBasis([0, 1, 1.5, 4, 5]);
    const c = [1, -2, 0.5, 3, 0, 1, 2].slice(0, basis.size);
    const at = (y: number, part: 'value' | 'slope' | 'second') => {
      const row = splineRow(basis, y);
      return row[part].reduce((sum, each, i) => sum + each * c[row.first + i], 0);
    };
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 4.99, noNaN: true }), y => {
        expect(splineRow(basis, y).value.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 12);
        const h = 1e-5;
        expect((at(y + h, 'value') - at(y - h, 'value')) / (2 * h)).toBeCloseTo(at(y, 'slope'), 3);
        expect((at(y + h, 'slope') - at(y - h, 'slope')) / (2 * h)).toBeCloseTo(at(y, 'second'), 2);
      }),
    );
  });

  it('meets its end coefficients', () => {
    const basis = splineBasis([0, 2, 3]);
    expect(splineRow(basis, 0).value[0]).toBeCloseTo(1, 12);
    expect(splineRow(basis, 3).value[3]).toBeCloseTo(1, 12);
  });
});

describe('descend', () => {
  it('finds the bottom of the banana valley (Rosenbrock 1960, from memory) at (1, 1)', () => {
    const x = Float64Array.of(-1.2, 1);
    const found = descend(
      (p, g) => {
        const [a, b] = p;
        g[0] = -400 * a * (b - a * a) - 2 * (1 - a);
        g[1] = 200 * (b - a * a);
        return 100 * (b - a * a) ** 2 + (1 - a) ** 2;
      },
      x,
      { iterations: 500, tolerance: 1e-9 },
    );
    expect(x[0]).toBeCloseTo(1, 7);
    expect(x[1]).toBeCloseTo(1, 7);
    expect(found.iterations).toBeLessThan(100);
  });
});

describe('QuickLineObjective', () => {
  it('has the gradient its value shows, with every kind of constraint at work', () => {
    const breakpoints = Array.from({ length: 13 }, (_, i) => 2.5 * i);
    const basis = splineBasis(breakpoints);
    const nodes = Array.from({ length: 61 }, (_, i) => i / 2);
    const objective = new QuickLineObjective({
      physics: pathPhysics(fillCourseConditions({ startSpeed: 12 }), Math.tan(0.9)),
      startEnergy: 72,
      h: new Float64Array(60).fill(0.5),
      rows: nodes.slice(1).map(y => splineRow(basis, y - 0.25)),
      gates: [{ row: splineRow(basis, 15), x: 2.5, outside: 1, clearance: 0.4 }],
      leastRadius: 9,
      mostBraking: 1,
      mostRate: 2,
    });
    const c = Float64Array.from({ length: basis.size }, (_, i) => 1.4 * Math.sin(0.9 * i) + 0.05 * i);
    const found = objective.violations(c);
    for (const kind of ['radius', 'braking', 'rate', 'gate'] as const) expect(found[kind]).toBeGreaterThan(0);
    objective.raiseMultipliers(c);
    const gradient = new Float64Array(c.length);
    const unused = new Float64Array(c.length);
    objective.evaluate(c, gradient);
    for (let i = 0; i < c.length; i++) {
      const h = 1e-6;
      const moved = (by: number) =>
        objective.evaluate(
          c.map((v, k) => (k === i ? v + by : v)),
          unused,
        );
      const slope = (moved(h) - moved(-h)) / (2 * h);
      expect(Math.abs(gradient[i] - slope)).toBeLessThan(1e-5 * (1 + Math.abs(slope)));
    }
  });
});
