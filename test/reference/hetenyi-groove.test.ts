import { describe, expect, it } from 'vitest';
import { type CarvingSki, grooveSolver, type SnowLaw } from '../../core/carve/index.ts';

// Hetényi, Beams on Elastic Foundation (1946) [memory, FE-checked]: free-free beam, central load,
// EI 500 N·m², k 2·10⁵ N/m², L 1.4 m, P 800 N: y₀ 6.7407 mm, ends −1.7170 mm, M₀ 65.184 N·m.
const FOUNDATION = 2e5;
const WIDTH = 0.033;
const ANGLE = (1 * Math.PI) / 180;
const beam: CarvingSki = {
  edge: { length: 1.4, halfWidth: () => WIDTH, slope: () => 0, curvature: () => 0 },
  bending: () => 500,
  torsion: null,
  camber: 0,
  bootCentre: 0.7,
  soleLength: 0.002,
};
/** Pushes and pulls alike in proportion to how far the base is below its plane. */
const springs: SnowLaw = {
  remembers: false,
  evaluate(depth, halfWidth, edgeAngle, _hardness, out) {
    out.fill(0);
    out[0] = (FOUNDATION * (depth - halfWidth * Math.sin(edgeAngle))) / Math.cos(edgeAngle);
    out[1] = FOUNDATION / Math.cos(edgeAngle);
  },
};

describe('a linear foundation in place of snow', () => {
  const answer = grooveSolver(beam, { law: springs }).solve({
    edgeAngle: ANGLE,
    load: 800,
    hardness: 1e9,
    fore: 0,
  });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  const middle = answer.x.findIndex(x => Math.abs(x - 0.7) < 1e-9);

  it('sinks and lifts as the closed form says', () => {
    expect(-answer.height[middle] * 1000).toBeCloseTo(6.7407, 2);
    expect(-answer.height[0] * 1000).toBeCloseTo(-1.717, 2);
    expect(-answer.height[answer.x.length - 1] * 1000).toBeCloseTo(-1.717, 2);
  });

  it('carries the bending moment of the closed form', () => {
    // From the published line load on one half; the sole is short enough to count as a point.
    let moment = 0;
    for (let i = 0; i < middle; i++) {
      const half = 0.5 * (answer.x[i + 1] - answer.x[i]);
      moment += half * answer.lineLoad[i] * (0.7 - answer.x[i]);
      moment += half * answer.lineLoad[i + 1] * (0.7 - answer.x[i + 1]);
    }
    expect(Math.abs(moment - 65.184)).toBeLessThan(0.15);
  });
});
