import { expect, test } from 'vitest';
import type { SceneTrack } from '../../../renderer/scene/track-at.ts';
import { wayMarks } from '../../../renderer/scene/way-marks.ts';

/** Turns of one second, the mass as far inside the skis as they lean. */
function turns(share: number): SceneTrack {
  const t = Array.from({ length: 301 }, (_, i) => i / 100);
  const swing = (time: number) => Math.sin(Math.PI * time);
  const column = (of: (time: number) => number) => t.map(of);
  const zero = t.map(() => 0);
  return {
    t,
    x: column(time => -swing(time)),
    y: column(time => 10 * time),
    massX: column(time => -swing(time) * (1 - share)),
    massY: column(time => 10 * time),
    lean: column(time => 0.5 * swing(time)),
    heading: zero,
    speed: zero,
    edge: zero,
    slip: zero,
    load: zero,
    radius: zero,
    phase: zero,
  };
}

test('ways are told apart once a turn, where they are furthest apart', () => {
  expect(wayMarks(turns(0.6)).map(row => row / 100)).toEqual([0.5, 1.5, 2.5]);
});

test('ways that are one to the eye, or a mass nobody knows, are not told', () => {
  expect(wayMarks(turns(0.2))).toEqual([]);
  const { massX, massY, ...skis } = turns(0.6);
  expect([massX?.length, massY?.length]).toEqual([301, 301]);
  expect(wayMarks(skis)).toEqual([]);
});
