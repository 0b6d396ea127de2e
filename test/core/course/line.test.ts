import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Gate, gateTurns, lineThroughGates, rhythmicSet } from '../../../core/course/index.ts';
import { told } from '../fault/told.ts';

const gate = (x: number, y: number): Gate => ({ label: `${y}`, x, y, colour: null, turn: null });

describe('lineThroughGates', () => {
  it('passes each pole outside at the clearance, with curvature, heading and place continuous', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: 1, max: 4, noNaN: true }), fc.double({ min: 9, max: 14, noNaN: true })),
          {
            minLength: 4,
            maxLength: 30,
          },
        ),
        steps => {
          let y = 0;
          const gates = steps.map(([across, down], i) => {
            y += down;
            return gate(((i % 2 === 0 ? 1 : -1) * across) / 2, y);
          });
          const line = lineThroughGates(gates, { clearance: 0.4, step: 0.25 });
          let sharpest = 0;
          for (let i = 1; i < line.s.length; i++) {
            const ds = line.s[i] - line.s[i - 1];
            sharpest = Math.max(sharpest, Math.abs(line.curvature[i] - line.curvature[i - 1]) / ds);
            const turned = line.heading[i] - line.heading[i - 1];
            expect(turned / ds).toBeCloseTo((line.curvature[i] + line.curvature[i - 1]) / 2, 1);
            expect(Math.hypot(line.x[i] - line.x[i - 1], line.y[i] - line.y[i - 1])).toBeCloseTo(ds, 2);
          }
          // A jump of curvature would show as a slope of order 0.15/0.25 = 0.6 per metre squared.
          expect(sharpest).toBeLessThan(0.3);
          gates.forEach((pole, g) => {
            let nearest = Number.POSITIVE_INFINITY;
            for (let i = 0; i < line.s.length; i++) {
              nearest = Math.min(nearest, Math.hypot(line.x[i] - pole.x, line.y[i] - pole.y));
            }
            expect(nearest).toBeCloseTo(0.4, 6);
            const at = line.gateSamples[g];
            const outside = (line.x[at] - pole.x) * Math.cos(line.heading[at]);
            expect(Math.sign(outside)).toBe(-line.turns[g]);
          });
        },
      ),
      { numRuns: 30 },
    );
  });

  it('follows a mirrored set on the mirrored line', () => {
    const gates = [gate(1, 10), gate(-2, 21), gate(1.5, 33), gate(-1, 42), gate(2, 55)];
    const line = lineThroughGates(gates);
    const mirror = lineThroughGates(gates.map(each => ({ ...each, x: -each.x })));
    expect(mirror.length).toBeCloseTo(line.length, 9);
    for (let i = 0; i < line.s.length; i++) expect(mirror.x[i]).toBeCloseTo(-line.x[i], 9);
  });

  it('takes the turn as written over what the poles show, and alternates where they show nothing', () => {
    const straight = [gate(0, 10), gate(0, 20), gate(0, 30)];
    expect([...gateTurns(straight)]).toEqual([1, -1, 1]);
    expect([...gateTurns(straight.map(each => ({ ...each, turn: -1 as const })))]).toEqual([-1, -1, -1]);
    expect([...gateTurns(rhythmicSet(4, 10, 3).map(each => ({ ...each, turn: null })))]).toEqual([
      -1, 1, -1, 1,
    ]);
  });

  it('names the gate it cannot reach', () => {
    expect(told(() => lineThroughGates([gate(0, 10)]))).toEqual([
      'gates: 1 is not accepted; accepted is two gates or more',
    ]);
    expect(told(() => lineThroughGates([gate(0, 10), gate(0.1, 10), gate(0, 30)], { clearance: 0 }))).toEqual(
      [expect.stringMatching(/^gates: no forward line reaches 10 /)],
    );
  });
});
