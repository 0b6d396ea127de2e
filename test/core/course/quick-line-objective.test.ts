import { describe, expect, it } from 'vitest';
import { fillCourseConditions } from '../../../core/course/gate-conditions.ts';
import { QuickLineObjective } from '../../../core/course/quick-line-objective.ts';
import { pathPhysics } from '../../../core/course/timed-path.ts';
import { splineBasis, splineRow } from '../../../core/numeric/index.ts';

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
