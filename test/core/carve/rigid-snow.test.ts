import { describe, expect, it } from 'vitest';
import {
  biteAngle,
  carveRigid,
  cosineRadius,
  edgeHeight,
  edgeLateral,
  pressedHeight,
} from '../../../core/carve/index.ts';
import { parabolicEdge, radians } from './demo.ts';

const ski = {
  sidecutRadius: 13,
  sidecutDepth: 0.0188,
  camber: 0.006,
  baseBevel: radians(0.5),
  sideAngle: radians(87),
};

describe('rigid snow', () => {
  it('turns on R_sc cosθ', () => {
    expect(cosineRadius(13, radians(60))).toBeCloseTo(6.5, 12);
    expect(carveRigid(ski, 0).turnRadius).toBe(13);
  });

  it('lays the whole pressed edge into the snow plane, on an arc of the cosine radius', () => {
    const edge = parabolicEdge(1.4, 13, 0.066, 0.012);
    for (const degrees of [10, 35, 65]) {
      const angle = radians(degrees);
      const radius = cosineRadius(13, angle);
      const heights = [0, 0.3, 0.7, 1.1, 1.4].map(x =>
        edgeHeight(pressedHeight(edge, angle, x), edge.halfWidth(x), angle),
      );
      // A taper leaves the two ends at different heights; the edge is then straight between them.
      const slope = (heights[4] - heights[0]) / 1.4;
      expect(heights[2]).toBeCloseTo(heights[0] + slope * 0.7, 12);
      expect(heights[1]).toBeCloseTo(heights[0] + slope * 0.3, 12);
      const lateral = (x: number) => edgeLateral(pressedHeight(edge, angle, x), edge.halfWidth(x), angle);
      const curvature = (lateral(1.2) - 2 * lateral(0.7) + lateral(0.2)) / 0.25;
      expect(1 / curvature).toBeCloseTo(radius, 9);
    }
  });

  it('moves the mid-ski by d·tanθ plus the camber', () => {
    expect(carveRigid(ski, radians(45)).travel).toBeCloseTo(0.0188 + 0.006, 12);
  });

  it('delays the bite by the base bevel and opens the corner by it', () => {
    expect(carveRigid(ski, radians(0.5)).bites).toBe(false);
    expect(carveRigid(ski, radians(0.6)).bites).toBe(true);
    expect(biteAngle(radians(30), radians(0.5))).toBeCloseTo(radians(29.5), 12);
    expect(carveRigid(ski, radians(30)).cornerAngle).toBeCloseTo(radians(87.5), 12);
  });

  it('names the edge angle it cannot take', () => {
    expect(() => carveRigid(ski, radians(90))).toThrow(expect.objectContaining({ field: 'edgeAngle' }));
    expect(() => carveRigid(ski, -0.1)).toThrow(/edgeAngle/);
  });
});
