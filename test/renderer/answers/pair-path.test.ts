import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitRhythmicSet, lineThroughGates, rhythmicSet } from '../../../core/course/index.ts';
import { arcsAndTraverses } from '../../../renderer/answers/pair-path.ts';

const length = ({ x, y }: { x: readonly number[]; y: readonly number[] }) =>
  x.reduce((sum, at, i) => (i === 0 ? 0 : sum + Math.hypot(at - x[i - 1], y[i] - y[i - 1])), 0);

describe('arcs and traverses of a ski that turns more tightly than the line', () => {
  const gates = rhythmicSet(9, 11, 3);
  const line = lineThroughGates(gates);

  it('touch the line at every gate', () => {
    const path = arcsAndTraverses(
      line,
      gates.map(() => 4),
    )!;
    for (const at of line.gateSamples) {
      const nearest = Math.min(...path.x.map((x, i) => Math.hypot(x - line.x[at], path.y[i] - line.y[at])));
      // The arc has a point every 0.04 rad of 4 m.
      expect(nearest).toBeLessThan(0.09);
    }
  });

  it('turn no more tightly than the ski and never back', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 5, noNaN: true }), radius => {
        const path = arcsAndTraverses(
          line,
          gates.map(() => radius),
        )!;
        let before: number | null = null;
        for (let i = 1; i < path.x.length; i++) {
          const step = Math.hypot(path.x[i] - path.x[i - 1], path.y[i] - path.y[i - 1]);
          if (step < 1e-9) continue;
          expect(path.y[i]).toBeGreaterThan(path.y[i - 1]);
          const heading = Math.atan2(path.x[i] - path.x[i - 1], path.y[i] - path.y[i - 1]);
          // A chord of an arc turns by half a step at each of its ends.
          if (before !== null) expect(Math.abs(heading - before)).toBeLessThan(0.0401);
          before = heading;
        }
      }),
      { numRuns: 25 },
    );
  });

  it('have the traverse of the closed form in the middle of a rhythmic set', () => {
    // Poles 11 m apart and 3 m across; the line passes them 0.4 m outside, where its apexes lie.
    const across = Math.abs(line.x[line.gateSamples[4]] - line.x[line.gateSamples[5]]);
    const down = line.y[line.gateSamples[5]] - line.y[line.gateSamples[4]];
    const fit = fitRhythmicSet(down, across, 5, 0.2);
    if (fit.kind !== 'arcs and traverses') throw new Error(fit.kind);
    const path = arcsAndTraverses(
      line,
      gates.map(() => fit.radius),
    )!;
    const steps = path.x.slice(1).map((x, i) => Math.hypot(x - path.x[i], path.y[i + 1] - path.y[i]));
    const straights = steps.filter(step => step > 0.5);
    expect(straights[4]).toBeCloseTo(fit.traverse, 1);
    expect(length(path)).toBeGreaterThan(0);
  });

  it('are none where the arcs leave no room between them', () => {
    expect(
      arcsAndTraverses(
        line,
        gates.map(() => 14),
      ),
    ).toBeNull();
  });
});
