import { expect, test } from 'vitest';
import { placeBetween } from '../../../core/line/reference-line.ts';

const from = { x: 1.9, y: 0, heading: 0.1 };
const to = { x: -1.9, y: 10, heading: -0.2 };

test('begins and ends at its points, along their headings', () => {
  const first = placeBetween(from, to, 0);
  const last = placeBetween(from, to, 1);
  expect([first.x, first.y, first.heading]).toEqual([1.9, 0, expect.closeTo(0.1, 12)]);
  expect([last.x, last.y, last.heading]).toEqual([
    expect.closeTo(-1.9, 12),
    expect.closeTo(10, 12),
    expect.closeTo(-0.2, 12),
  ]);
});

test('heading, metres and curvature are those of the path', () => {
  const h = 1e-5;
  for (const part of [0.1, 0.35, 0.5, 0.8]) {
    const [a, place, b] = [part - h, part, part + h].map(p => placeBetween(from, to, p));
    const metres = Math.hypot(b.x - a.x, b.y - a.y) / (2 * h);
    expect(place.metres).toBeCloseTo(metres, 6);
    expect(place.heading).toBeCloseTo(Math.atan2(b.x - a.x, b.y - a.y), 8);
    expect(place.curvature).toBeCloseTo((b.heading - a.heading) / (2 * h * metres), 5);
  }
});
