// @module-tag slow
/** Rhythms over the sets that are skied, each pair in its own groove: solved, or refused by the limit that cannot be kept. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  buildRadiusTable,
  carvingSkiOf,
  cosineTurnSurface,
  tableTurnSurface,
  usualWallStrength,
} from '../../../core/carve/index.ts';
import { HELD_BACK_BY, rhythm } from '../../../core/line/index.ts';
import { readPair, type Ski, skiOf } from '../../../core/pair/index.ts';
import { sidecut } from '../../../core/shape/index.ts';
import { conditionsOf, DEGREE, SLALOM } from './questions.ts';

const demo = new URL('../../../renderer/demo/', import.meta.url);
const skis = readdirSync(demo)
  .filter(name => name.endsWith('.pair.json'))
  .map(name => {
    const read = readPair(readFileSync(new URL(name, demo), 'utf8'));
    if (!read.ok) throw new Error(name);
    return skiOf(read.pair);
  });

const GROOMED = 1e9;

/** The pair in its own groove on groomed snow; the cosine rule for one without a stiffness. */
function surfaceOf(ski: Ski) {
  const { contactLength } = ski;
  const carving = carvingSkiOf(ski);
  if (!carving.ok) return cosineTurnSurface(sidecut(ski).radius, { contactLength, hardness: GROOMED });
  const table = buildRadiusTable(carving.ski, GROOMED, {
    edges: Array.from({ length: 14 }, (_, i) => (4 + 5 * i) * DEGREE),
    loads: Array.from({ length: 7 }, (_, i) => 200 * 20 ** (i / 6)),
  });
  if (table === null || 'ok' in table) throw new Error(`${ski.name}: no table`);
  return tableTurnSurface(table);
}

let seed = 20261;
function random(from: number, to: number): number {
  seed = (seed * 1103515245 + 12345) % 2147483648;
  return from + ((to - from) * seed) / 2147483648;
}

describe.each(skis.map(ski => [ski.name, ski] as const))('%s', (_, ski) => {
  const surface = surfaceOf(ski);
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
  const asked = (radius: number, spacing: number, offset: number, slopeDeg: number) => ({
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
    const found = rhythm(asked(10, 30, 1.5, 5), options);
    if (!found.ok) throw new Error(found.limit);
    expect(found.secondsPerGate).toBeGreaterThan(1.9);
    expect(found.secondsPerGate).toBeLessThan(2.3);
  });

  test('a long ski keeps no pace through tight gates on 5°, and on 7° it does: the hill must pay for the scraping', {
    timeout: 120_000,
  }, () => {
    const refused = rhythm(asked(25, 8, 5, 5), options);
    if (refused.ok) throw new Error(`${refused.secondsPerGate} s found`);
    expect(['edge angle', 'leg']).toContain(refused.limit);
    const found = rhythm(asked(25, 8, 5, 7), options);
    if (!found.ok) throw new Error(found.limit);
    // Near the border every limit is dear: that is what "cannot be kept" means beyond it.
    expect(found.run.limits[0]!.by).toBe('edge angle');
    expect(found.run.limits[0]!.seconds).toBeGreaterThan(0.005);
  });
});
