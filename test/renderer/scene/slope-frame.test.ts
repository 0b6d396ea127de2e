import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { profileThrough } from '../../../core/run/index.ts';
import { evenGround, SlopeFrame } from '../../../renderer/scene/slope-frame.ts';
import { snowGrid, spread } from '../../../renderer/scene/snow-surface.ts';

describe('slope frame', () => {
  it('falls by the sine of the slope and stays at right angles', () => {
    const frame = new SlopeFrame(evenGround(0.3));
    const p = frame.place(2, 10, 0, new Vector3());
    expect(p.x).toBe(2);
    expect(p.y).toBeCloseTo(-10 * Math.sin(0.3), 12);
    expect(p.length()).toBeCloseTo(Math.hypot(2, 10), 12);
    const x = frame.direct(1, 0, 0, 0, new Vector3());
    const y = frame.direct(0, 1, 0, 0, new Vector3());
    const z = frame.direct(0, 0, 1, 0, new Vector3());
    expect(x.clone().cross(y).distanceTo(z)).toBeLessThan(1e-12);
  });

  it('finds the slope point again, also on a profile of the run model', () => {
    const profile = profileThrough([0, 20, 50, 90], [0, -4, -14, -20]);
    for (const frame of [new SlopeFrame(evenGround(0.2)), new SlopeFrame(profile)]) {
      const found = frame.locate(frame.place(-3, 31, 0, new Vector3()));
      expect(found.x).toBeCloseTo(-3, 9);
      expect(found.y).toBeCloseTo(31, 4);
    }
  });
});

describe('snow grid', () => {
  it('has the counts of its lists, faces up and can leave a hole', () => {
    const frame = new SlopeFrame(evenGround(0.3));
    const xs = spread(0, 4, 1);
    const ys = spread(0, 6, 2);
    const grid = snowGrid(xs, ys, () => 0, frame);
    expect(grid.attributes.position.count).toBe(5 * 4);
    expect(grid.index!.count).toBe(4 * 3 * 6);
    for (let i = 0; i < 20; i++) expect(grid.attributes.normal.getY(i)).toBeCloseTo(Math.cos(0.3), 6);
    const hole = snowGrid(
      xs,
      ys,
      () => 0,
      frame,
      (x, y) => x > 1 && x < 2 && y < 2,
    );
    expect(hole.index!.count).toBe((4 * 3 - 1) * 6);
  });
});
