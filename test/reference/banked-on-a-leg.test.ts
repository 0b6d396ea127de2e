// @module-tag slow
/**
 * Banked turns of a skier on a leg. Numbers of a point on the skis: derived apart from this solver.
 */
import { describe, expect, it } from 'vitest';
import { bankedTurns, cosineTurn, evenSlope, type RunConditions } from '../../core/run/index.ts';
import { near, RAD, SKIER, solved } from './skier-cases.ts';

describe('banked turns on a leg', () => {
  it('turn on their traverse with the skis tilted as the leg leans', () => {
    const { track } = solved({
      ...SKIER,
      friction: 0.03,
      dragArea: 0.45,
      turn: cosineTurn(13),
      profile: evenSlope(6 * RAD),
      programme: bankedTurns(60 * RAD, 4),
      startSpeed: 5,
    });
    const traverses = track.events.filter(e => e.name === 'traverse');
    expect(traverses).toHaveLength(4);
    for (const [i, e] of traverses.entries()) {
      expect(e.heading).toBeCloseTo((i % 2 === 0 ? 60 : -60) * RAD, 2);
    }
    for (let i = 0; i < track.t.length; i++) expect(track.edge[i]).toBe(track.lean[i]);
    expect(track.summary.energyErrorRatio).toBeLessThan(1e-6);
  });
});

describe('forty banked turns between 60° traverses', () => {
  const banked = (slope: number, leg: Partial<RunConditions> = {}) =>
    solved({
      ...SKIER,
      friction: 0.03,
      dragArea: 0.45,
      turn: cosineTurn(13),
      profile: evenSlope(slope * RAD),
      programme: bankedTurns(60 * RAD, 40),
      startSpeed: 5,
      ...leg,
    }).track;

  it('are ridden on every slope from 4 to 12°', { timeout: 600_000 }, () => {
    let before = 0;
    for (const slope of [4, 6, 8, 10, 12]) {
      const { summary, events } = banked(slope);
      expect(events.filter(e => e.name === 'traverse')).toHaveLength(40);
      expect(summary.energyErrorRatio).toBeLessThan(1e-6);
      expect(summary.endSpeed).toBeGreaterThan(before);
      before = summary.endSpeed;
    }
  });

  // A point on the skis: end speeds derived apart from this solver; loads of a leg that lets the mass fall differ.
  it('end as fast as those of a point on the skis, where the leg is short', { timeout: 240_000 }, () => {
    const short = { legShortest: 0.2, legLongest: 0.3, pushMax: 20, pushRate: 100 };
    near(banked(4, short).summary.endSpeed, 8.2, 0.02, 0);
    near(banked(6, short).summary.endSpeed, 10.2, 0.015, 0);
  });
});
