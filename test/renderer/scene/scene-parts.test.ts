import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { ARROW_VERTICES, writeArrow } from '../../../renderer/scene/arrows.ts';
import { bootBlock } from '../../../renderer/scene/boot-block.ts';
import { cameraPose, fitDistance, poseToState } from '../../../renderer/scene/camera-rig.ts';
import { Playback } from '../../../renderer/scene/playback.ts';
import { rigidSnowBend, SkiSeat } from '../../../renderer/scene/ski-object.ts';
import { figureJoints, figureJointsAt } from '../../../renderer/scene/skier.ts';
import { evenGround, SlopeFrame } from '../../../renderer/scene/slope-frame.ts';
import { corduroyHeights, reliefTexels, TILE } from '../../../renderer/scene/snow-relief.ts';
import { rowAt, spacedRows, trackAt, trackState } from '../../../renderer/scene/track-at.ts';
import { demoForm, demoTrack } from './preview/demo.ts';

const frame = new SlopeFrame(evenGround(0.25));
const form = demoForm(1.55, 1.36, 0.117, 0.066, 0.104);

describe('ski on the snow', () => {
  it('has the loaded edge under the boot on the track, as deep as told, tipped by the edge angle', () => {
    const seat = new SkiSeat();
    for (const edge of [0.8, -0.8]) {
      const side = Math.sign(edge);
      seat.set({ x: 3, y: 12, axis: 0.4, edge, depth: 0.012 }, 0.033, frame);
      const corner = new Vector3(side * 0.033, 0, 0).applyMatrix4(seat.matrix);
      const track = frame.place(3, 12, -0.012, new Vector3());
      expect(corner.distanceTo(track)).toBeLessThan(1e-9);
      const normal = frame.direct(0, 0, 1, 12, new Vector3());
      expect(seat.up.dot(normal)).toBeCloseTo(Math.cos(0.8), 9);
      expect(side * seat.right.dot(normal)).toBeLessThan(0);
      expect(seat.matrix.determinant()).toBeCloseTo(1, 9);
    }
  });

  it('pressed onto rigid snow it has its whole edge in the snow plane', () => {
    const theta = 0.9;
    const { x, height } = rigidSnowBend(form, theta);
    const rise = (i: number) => height[i] * Math.cos(theta) - form.halfWidth[i] * Math.sin(theta);
    const n = x.length - 1;
    for (let i = 0; i <= n; i++) {
      expect(rise(i)).toBeCloseTo(rise(0) + (i / n) * (rise(n) - rise(0)), 9);
    }
  });
});

describe('figure', () => {
  it('bends at the hips by the angulation and leans by ψ', () => {
    const joints = figureJointsAt();
    const skiUp = new Vector3(Math.sin(0.9), Math.cos(0.9), 0);
    const leanUp = new Vector3(Math.sin(0.7), Math.cos(0.7), 0);
    figureJoints(new Vector3(), skiUp, leanUp, joints);
    expect(joints.hips.angleTo(skiUp)).toBeCloseTo(0, 6);
    expect(Math.atan2(joints.mass.x, joints.mass.y)).toBeCloseTo(0.7, 9);
    expect(joints.head.clone().sub(joints.hips).angleTo(skiUp)).toBeGreaterThan(0.2);
  });
});

describe('arrow', () => {
  it('reaches exactly its length and shrinks as a whole when short', () => {
    const out = new Float32Array(ARROW_VERTICES * 3);
    for (const length of [0.05, 0.4, 2]) {
      writeArrow(out, length);
      let top = 0;
      let wide = 0;
      for (let i = 0; i < out.length; i += 3) {
        top = Math.max(top, out[i + 1]);
        wide = Math.max(wide, Math.hypot(out[i], out[i + 2]));
        expect(out[i + 1]).toBeGreaterThanOrEqual(-1e-9);
      }
      expect(top).toBeCloseTo(length, 6);
      expect(wide).toBeLessThanOrEqual(Math.min(0.0521, length));
    }
  });
});

describe('boot block', () => {
  it('stands on the ski and faces outwards', () => {
    const p = bootBlock(0.3).attributes.position;
    const normal = bootBlock(0.3).attributes.normal;
    let low = 1;
    for (let i = 0; i < p.count; i++) low = Math.min(low, p.getZ(i));
    expect(low).toBe(0);
    for (let block = 0; block < p.count / 36; block++) {
      const middle = new Vector3();
      for (let i = 0; i < 36; i++) middle.add(new Vector3().fromBufferAttribute(p, block * 36 + i));
      middle.divideScalar(36);
      for (let i = 0; i < 36; i++) {
        const v = block * 36 + i;
        const out = new Vector3().fromBufferAttribute(p, v).sub(middle);
        expect(out.dot(new Vector3().fromBufferAttribute(normal, v))).toBeGreaterThan(0);
      }
    }
  });
});

describe('snow relief', () => {
  it('closes on itself and gives unit normals facing up', () => {
    const size = 64;
    const heights = corduroyHeights(size);
    const texels = reliefTexels(heights, size, TILE);
    for (let i = 0; i < texels.length; i += 4) {
      const [x, y, z] = [0, 1, 2].map(k => (texels[i + k] - 127.5) / 127.5);
      expect(Math.hypot(x, y, z)).toBeGreaterThan(0.98);
      expect(Math.hypot(x, y, z)).toBeLessThan(1.02);
      expect(z).toBeGreaterThan(0);
    }
  });
});

describe('camera', () => {
  it('stands far enough off to fit both spans', () => {
    const d = fitDistance(4, 2, 40, 1.6);
    const half = Math.tan((20 * Math.PI) / 180) * d;
    expect(2 * half).toBeGreaterThanOrEqual(2 - 1e-9);
    expect(2 * half * 1.6).toBeCloseTo(4, 9);
    const pose = cameraPose();
    pose.direction.set(0, 3, 4);
    const state = { target: new Vector3(), azimuth: 0, elevation: 0, distance: 0, fov: 0 };
    expect(poseToState(pose, 1.5, state).elevation).toBeCloseTo(Math.asin(0.6), 9);
  });
});

describe('playback', () => {
  it('plays at its rate, stops at the end and starts over', () => {
    const clock = new Playback();
    const reported: number[] = [];
    clock.onTime = seconds => reported.push(seconds);
    clock.setDuration(2);
    clock.rate = 0.5;
    clock.play();
    expect(clock.advance(1)).toBe(true);
    expect(clock.time).toBe(0.5);
    expect(clock.advance(10)).toBe(false);
    expect(clock.time).toBe(2);
    expect(clock.playing).toBe(false);
    clock.play();
    expect(clock.time).toBe(0);
    clock.seek(9);
    expect(clock.time).toBe(2);
    expect(reported).toEqual([0, 0.5, 2, 0, 2]);
  });
});

describe('track in the scene', () => {
  const track = demoTrack(4, 0.9, 12, 3);

  it('is read straight between rows and held at its ends', () => {
    const s = trackState();
    expect(trackAt(track, 1.005, s).y).toBeCloseTo((track.y[100] + track.y[101]) / 2, 9);
    expect(trackAt(track, -1, s).row).toBe(0);
    expect(trackAt(track, 99, s).y).toBe(track.y[track.t.length - 1]);
    expect(rowAt(track.t, 2)).toBe(200);
  });

  it('is thinned to rows that are spaced, with both ends', () => {
    const rows = spacedRows(track, 0.5);
    expect(rows[0]).toBe(0);
    expect(rows[rows.length - 1]).toBe(track.t.length - 1);
    for (let k = 1; k < rows.length - 1; k++) {
      const gap = Math.hypot(
        track.x[rows[k]] - track.x[rows[k - 1]],
        track.y[rows[k]] - track.y[rows[k - 1]],
      );
      expect(gap).toBeGreaterThan(0.48);
    }
  });
});
