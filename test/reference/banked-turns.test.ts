/**
 * Banked turns between 60° traverses: R_sc 13 m by the cosine rule, μ 0.03, C_dA 0.45 m², ρ 1.1, m 75 kg,
 * start 5 m/s, 40 turns [derived: an independent trial]. Komissarov, arXiv:1812.02539 (2019) (abstract seen):
 * pure carving only below a critical slope of 8–20°, set mostly by friction and weakly by the sidecut radius;
 * speed saturates well below straight-running speed.
 */
import { describe, expect, it } from 'vitest';
import { pointTurns } from '../../core/run/banked-guess.ts';
import { bankedTurns, cosineTurn, evenSlope, speedCeiling, terminalSpeed } from '../../core/run/index.ts';
import { fillConditions } from '../../core/run/run-conditions.ts';
import { smoothGround } from '../../core/run/smooth-ground.ts';

const RAD = Math.PI / 180;
const SKIER = { mass: 75, friction: 0.03, dragArea: 0.45, airDensity: 1.1 };

/** The point skier: a leg of no length. */
function banked(slope: number, sidecut = 13, friction = SKIER.friction) {
  const profile = evenSlope(slope * RAD);
  const programme = bankedTurns(60 * RAD, 40);
  const run = fillConditions({
    ...SKIER,
    friction,
    turn: cosineTurn(sidecut),
    profile,
    programme,
    startSpeed: 5,
  });
  const point = pointTurns(run, programme, smoothGround(profile), -60 * RAD);
  return {
    end: point.end,
    turns: point.turns.length - 1,
    endSpeed: point.speed[point.speed.length - 1],
    maxSpeed: Math.max(...point.speed),
    maxLoadBodyWeights: Math.max(...point.sideways.map((a, i) => Math.hypot(a, point.normal[i]))) / 9.81,
  };
}

describe('banked turns [derived]', () => {
  const rows = [
    [4, 8.2, 1.22],
    [6, 10.2, 1.95],
    [8, 10.7, 3.3],
    [10, 10.9, 5.2],
    [12, 11.0, 7.7],
  ];
  for (const [slope, endSpeed, peakLoad] of rows) {
    it(`${slope}°: ends at ${endSpeed} m/s with ${peakLoad} body weights, within 3 %`, () => {
      const run = banked(slope);
      expect(run.turns).toBe(40);
      expect(Math.abs(run.endSpeed / endSpeed - 1)).toBeLessThan(0.03);
      expect(Math.abs(run.maxLoadBodyWeights / peakLoad - 1)).toBeLessThan(0.03);
    });
  }
});

describe('after Komissarov (2019) [abstract seen], qualitatively', () => {
  /** Least whole degree at which the banked run breaks down or passes five body weights. */
  const critical = (sidecut: number, friction: number) => {
    for (let slope = 3; slope < 40; slope++) {
      const run = banked(slope, sidecut, friction);
      if (run.end === 'no balanced lean' || run.maxLoadBodyWeights > 5) return slope;
    }
    return 40;
  };

  it('a critical slope between 8 and 20°', () => {
    const slope = critical(13, 0.03);
    expect(slope).toBeGreaterThanOrEqual(8);
    expect(slope).toBeLessThanOrEqual(20);
  });

  it('more friction moves it more than twice the sidecut radius does', () => {
    const base = critical(13, 0.03);
    const rough = critical(13, 0.1);
    expect(rough).toBeGreaterThan(base);
    expect(Math.abs(critical(16, 0.03) - base)).toBeLessThan(rough - base);
  });

  it('speed saturates under the ceiling, well below the straight run', () => {
    const straight = terminalSpeed({ ...SKIER, slope: 12 * RAD });
    const run = banked(12);
    expect(run.maxSpeed).toBeLessThan(speedCeiling(13));
    expect(run.maxSpeed).toBeLessThan(0.6 * straight);
  });
});
