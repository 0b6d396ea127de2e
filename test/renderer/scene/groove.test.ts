import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import {
  type GroovePoint,
  GrooveRibbon,
  grooveTexels,
  SEGMENT_INDICES,
  SEGMENT_VERTICES,
} from '../../../renderer/scene/groove.ts';
import { evenGround, SlopeFrame } from '../../../renderer/scene/slope-frame.ts';

const frame = new SlopeFrame(evenGround(0.3));

function straight(i: number, kind: GroovePoint['kind'] = 'carve'): GroovePoint {
  return { x: 0, y: i, width: 0.1, depth: 0.01, kind };
}

function fill(ribbon: GrooveRibbon, points: number): void {
  for (let i = 0; i < points; i++) ribbon.add(straight(i), frame);
}

describe('groove ribbon', () => {
  it('starts with a point and adds a segment with each further one', () => {
    const ribbon = new GrooveRibbon(8);
    fill(ribbon, 1);
    expect(ribbon.segments).toBe(0);
    ribbon.add(straight(1), frame);
    ribbon.add(straight(1.0005), frame);
    expect(ribbon.segments).toBe(1);
    expect(ribbon.geometry.drawRange.count).toBe(SEGMENT_INDICES);
  });

  it('writes over the oldest segment when the ring is full', () => {
    const ribbon = new GrooveRibbon(4);
    fill(ribbon, 7);
    expect(ribbon.segments).toBe(4);
    expect(ribbon.geometry.drawRange.count).toBe(4 * SEGMENT_INDICES);
    const p = ribbon.geometry.attributes.position;
    const starts = [0, 1, 2, 3].map(slot => -p.getZ(slot * SEGMENT_VERTICES) / Math.cos(0.3));
    // Six segments went into four slots: the fifth and sixth took the places of the first two.
    expect(starts.map(Math.round)).toEqual([4, 5, 2, 3]);
  });

  it('lies on the slope plane with its width across the way, facing up', () => {
    const ribbon = new GrooveRibbon(4);
    fill(ribbon, 3);
    const across = ribbon.geometry.attributes.across;
    expect(across.getX(0)).toBeCloseTo(0.05, 6);
    expect(Math.hypot(across.getY(0), across.getZ(0))).toBeCloseTo(0, 6);
    const p = ribbon.geometry.attributes.position;
    const share = ribbon.geometry.attributes.share;
    const index = ribbon.geometry.index!;
    const up = frame.direct(0, 0, 1, 0, new Vector3());
    const corner = (k: number) => {
      const v = index.getX(k);
      return new Vector3(p.getX(v), p.getY(v), p.getZ(v)).addScaledVector(
        new Vector3(across.getX(v), across.getY(v), across.getZ(v)),
        share.getX(v),
      );
    };
    for (let t = 0; t < 2 * SEGMENT_INDICES; t += 3) {
      const a = corner(t);
      const face = corner(t + 1)
        .sub(a)
        .cross(corner(t + 2).sub(a));
      expect(face.dot(up)).toBeGreaterThan(0);
    }
    expect([...p.array, ...ribbon.geometry.attributes.normal.array].every(Number.isFinite)).toBe(true);
  });

  it('breaks where the ski leaves the snow and empties on clearing', () => {
    const ribbon = new GrooveRibbon(8);
    fill(ribbon, 3);
    ribbon.lift();
    ribbon.add(straight(10), frame);
    expect(ribbon.segments).toBe(2);
    ribbon.add(straight(11), frame);
    expect(ribbon.segments).toBe(3);
    ribbon.clear();
    expect(ribbon.segments).toBe(0);
    expect(ribbon.geometry.drawRange.count).toBe(0);
  });

  it('takes carve and skid from different halves of a texture whose patterns differ in lightness', () => {
    const ribbon = new GrooveRibbon(4);
    fill(ribbon, 2);
    ribbon.add(straight(2, 'skid'), frame);
    const uv = ribbon.geometry.attributes.uv;
    for (let v = 0; v < SEGMENT_VERTICES; v++) {
      expect(uv.getX(v)).toBeLessThan(0.5);
      expect(uv.getX(SEGMENT_VERTICES + v)).toBeGreaterThan(0.5);
    }
    const data = grooveTexels();
    const column = (x: number) => Array.from({ length: 64 }, (_, row) => data[4 * (row * 64 + x)]);
    expect(new Set(column(16)).size).toBe(1);
    const strokes = column(48);
    expect(Math.max(...strokes) - Math.min(...strokes)).toBeGreaterThan(80);
  });
});
