// @module-tag slow
/** Rhythms over the sets that are skied, each pair in its own groove: solved, or refused by the limit that cannot be kept. */
import { describe, expect, test } from 'vitest';
import { cosineTurnSurface, usualWallStrength } from '../../../core/carve/index.ts';
import { HELD_BACK_BY, rhythm } from '../../../core/line/index.ts';
import { demoSkis, grooveSurface } from './demo-grooves.ts';
import { conditionsOf, SLALOM } from './questions.ts';

const GROOMED = 1e9;

let seed = 20261;
function random(from: number, to: number): number {
  seed = (seed * 1103515245 + 12345) % 2147483648;
  return from + ((to - from) * seed) / 2147483648;
}

describe.each(demoSkis.map(ski => [ski.name, ski] as const))('%s', (_, ski) => {
  const surface = grooveSurface(ski, GROOMED);
  const questions = Array.from({ length: 3 }, () => {
    const spacing = random(8, 30);
    return [spacing, Math.min(random(1.5, 9), 0.6 * spacing), random(5, 30)] as const;
  });

  test.each(questions)('%d m by %d m on %d°', { timeout: 60_000 }, (spacing, offset, slopeDeg) => {
    const conditions = {
      ...conditionsOf({ ...SLALOM, slopeDeg }),
      ski: surface,
      contactLength: ski.contactLength,
      baseBevel: ski.baseBevel,
      wallStrength: usualWallStrength(GROOMED),
    };
    const answer = rhythm({ conditions, spacing, offset }, { stages: 32, beginnings: 1 });
    if (!answer.ok) {
      expect(answer.limit).not.toBe('');
      return;
    }
    const { run } = answer;
    expect(run.seconds).toBeGreaterThan(spacing / 40);
    expect(run.seconds).toBeLessThan(10);
    expect(Math.max(...run.push)).toBeLessThanOrEqual(conditions.skier.pushMost + 1e-6);
    expect(Math.max(...run.wall)).toBeLessThanOrEqual(1 + 1e-6);
    expect(run.limits.every(({ by }) => HELD_BACK_BY.includes(by))).toBe(true);
  });
});

describe('at the border of what can be skied', () => {
  const request = (radius: number, spacing: number, offset: number, slopeDeg: number) => ({
    conditions: {
      ...conditionsOf({ ...SLALOM, slopeDeg }),
      ski: cosineTurnSurface(radius),
      contactLength: radius > 20 ? 1.6 : 1.2,
    },
    spacing,
    offset,
  });
  const options = { stages: 32, beginnings: 1 };

  test('gates far apart on a gentle slope are solved by way of easier ones', { timeout: 120_000 }, () => {
    const found = rhythm(request(10, 30, 1.5, 5), options);
    if (!found.ok) throw new Error(found.limit);
    expect(found.secondsPerGate).toBeGreaterThan(1.9);
    expect(found.secondsPerGate).toBeLessThan(2.3);
  });

  test('a long ski keeps no pace through tight gates on 5°, and on 7° it does: the hill must pay for the scraping', {
    timeout: 120_000,
  }, () => {
    const refused = rhythm(request(25, 8, 5, 5), options);
    if (refused.ok) throw new Error(`${refused.secondsPerGate} s found`);
    expect(['edge angle', 'leg']).toContain(refused.limit);
    const found = rhythm(request(25, 8, 5, 7), options);
    if (!found.ok) throw new Error(found.limit);
    // Near the border every limit is dear: that is what "cannot be kept" means beyond it.
    expect(found.run.limits[0]!.by).toBe('edge angle');
    expect(found.run.limits[0]!.seconds).toBeGreaterThan(0.005);
  });
});
