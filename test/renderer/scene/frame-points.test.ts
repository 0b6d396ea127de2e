import fc from 'fast-check';
import { PerspectiveCamera, Vector3 } from 'three';
import { expect, it } from 'vitest';
import { arcExtent } from '../../../renderer/scene/arc-extent.ts';
import { CameraRig, cameraPose } from '../../../renderer/scene/camera-rig.ts';
import { framePoints } from '../../../renderer/scene/frame-points.ts';
import { evenGround, SlopeFrame } from '../../../renderer/scene/slope-frame.ts';

it('every arc, its label and the skier on it are in the picture, whatever the arcs, the hill and the window', () => {
  const angle = fc.double({ min: 0, max: 0.6, noNaN: true });
  const radius = fc.oneof(fc.double({ min: 2, max: 60, noNaN: true }), fc.constant(Infinity));
  const aspect = fc.double({ min: 0.6, max: 2.6, noNaN: true });
  fc.assert(
    fc.property(
      angle,
      fc.array(radius, { minLength: 1, maxLength: 4 }),
      aspect,
      fc.boolean(),
      (slope, radii, wide, above) => {
        const frame = new SlopeFrame(evenGround(slope));
        const length = Math.min(40, Math.max(2, radii[0]! * 1.75));
        const paths = radii.map(r => ({
          startX: 0,
          startY: 0,
          heading: -0.87,
          radius: r,
          turn: 1 as const,
          length,
        }));
        const { points } = arcExtent(paths, frame);
        const pose = cameraPose();
        pose.fov = 30;
        if (above) frame.direct(0, 0, 1, 0, pose.direction);
        else frame.direct(0.5, 0.75, 0.62, 0, pose.direction);
        framePoints(points, wide, pose);
        const camera = new PerspectiveCamera();
        new CameraRig(camera).apply(pose, wide, wide, 0);
        let most = 0;
        for (const point of points) {
          const { x, y } = point.clone().project(camera);
          expect(Math.abs(x)).toBeLessThan(0.9);
          expect(Math.abs(y)).toBeLessThan(0.9);
          most = Math.max(most, Math.abs(x) / 0.84, Math.abs(y) / 0.8);
        }
        // And no smaller than need be.
        expect(most).toBeGreaterThan(0.9);
      },
    ),
    { numRuns: 60 },
  );
});

it('without points a pose stays as it is', () => {
  const pose = cameraPose();
  pose.target.set(1, 2, 3);
  framePoints([], 1.5, pose);
  expect(pose.target).toEqual(new Vector3(1, 2, 3));
  expect(pose.high).toBe(2);
});
