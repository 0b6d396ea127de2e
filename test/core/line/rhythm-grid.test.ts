// @module-tag slow
/** Rhythms over the sets that are skied: each is solved, or refused by the limit that cannot be kept. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cosineTurnSurface } from '../../../core/carve/index.ts';
import { HELD_BACK_BY, rhythm } from '../../../core/line/index.ts';
import { readPair, skiOf } from '../../../core/pair/index.ts';
import { sidecut } from '../../../core/shape/index.ts';
import { conditionsOf, SLALOM } from './questions.ts';

const demo = new URL('../../../renderer/demo/', import.meta.url);
const skis = readdirSync(demo)
  .filter(name => name.endsWith('.pair.json'))
  .map(name => {
    const read = readPair(readFileSync(new URL(name, demo), 'utf8'));
    if (!read.ok) throw new Error(name);
    return skiOf(read.pair);
  });

let seed = 20261;
function random(from: number, to: number): number {
  seed = (seed * 1103515245 + 12345) % 2147483648;
  return from + ((to - from) * seed) / 2147483648;
}

const questions = skis.flatMap(ski =>
  Array.from({ length: 3 }, () => {
    const spacing = random(8, 30);
    return {
      ski,
      spacing,
      offset: Math.min(random(1.5, 9), 0.6 * spacing),
      slopeDeg: random(5, 30),
    };
  }),
);

test.each(
  questions.map(
    q =>
      [
        `${q.ski.name}, ${q.spacing.toFixed(1)} m by ${q.offset.toFixed(1)} m on ${q.slopeDeg.toFixed(1)}°`,
        q,
      ] as const,
  ),
)('%s', (_, { ski, spacing, offset, slopeDeg }) => {
  const conditions = {
    ...conditionsOf({ ...SLALOM, slopeDeg }),
    ski: cosineTurnSurface(sidecut(ski).radius),
    contactLength: ski.contactLength,
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
  expect(run.limits.every(({ by }) => HELD_BACK_BY.includes(by))).toBe(true);
});
