import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ArcPath,
  arcCentre,
  arcGeometry,
  dashPieces,
  type PlanePoint,
  pathGeometry,
  pointOnArc,
  radiusThrough,
} from '../../../renderer/scene/arc.ts';
import { evenGround, SlopeFrame } from '../../../renderer/scene/slope-frame.ts';

const frame = new SlopeFrame(evenGround(0.25));
const look = { colour: '#000000', dash: [], halfWidth: 0.02, strokes: 0, spokes: false };
const at: PlanePoint = { x: 0, y: 0, heading: 0 };

const anyArc = fc.record({
  startX: fc.double({ min: -20, max: 20, noNaN: true }),
  startY: fc.double({ min: -20, max: 20, noNaN: true }),
  heading: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
  radius: fc.double({ min: 4, max: 40, noNaN: true }),
  turn: fc.constantFrom<1 | -1>(1, -1),
  length: fc.double({ min: 1, max: 30, noNaN: true }),
});

describe('arc', () => {
  it('keeps its radius from its centre and its heading along the tangent', () => {
    fc.assert(
      fc.property(anyArc, fc.double({ min: 0, max: 1, noNaN: true }), (arc: ArcPath, share) => {
        const s = share * arc.length;
        const { x, y, heading } = { ...pointOnArc(arc, s, at) };
        const c = arcCentre(arc);
        expect(Math.hypot(x - c.x, y - c.y)).toBeCloseTo(arc.radius, 8);
        const { x: x2, y: y2 } = pointOnArc(arc, s + 1e-5, at);
        expect((x2 - x) / 1e-5).toBeCloseTo(Math.sin(heading), 4);
        expect((y2 - y) / 1e-5).toBeCloseTo(Math.cos(heading), 4);
      }),
    );
  });

  it('turns towards growing x to the right of the fall line', () => {
    const right: ArcPath = { startX: 0, startY: 0, heading: 0, radius: 10, turn: 1, length: 5 };
    expect(pointOnArc(right, 5, at).x).toBeGreaterThan(1);
    expect(pointOnArc({ ...right, turn: -1 }, 5, at).x).toBeLessThan(-1);
    expect(pointOnArc({ ...right, radius: Number.POSITIVE_INFINITY }, 5, at)).toMatchObject({ x: 0, y: 5 });
  });

  it('finds again the radius and side of an arc from one of its points', () => {
    fc.assert(
      fc.property(anyArc, (arc: ArcPath) => {
        const s = Math.min(arc.length, arc.radius * 2.5);
        const { x, y } = pointOnArc(arc, s, at);
        const found = radiusThrough(arc.startX, arc.startY, arc.heading, x, y);
        expect(found.turn).toBe(arc.turn);
        expect(found.radius / arc.radius).toBeCloseTo(1, 6);
      }),
    );
    expect(radiusThrough(0, 0, 0, 0, 7).radius).toBe(Number.POSITIVE_INFINITY);
  });

  it('cuts dashes without overlap and within the length', () => {
    expect(dashPieces(2, [])).toEqual([[0, 2]]);
    expect(dashPieces(2, [0.5, 0.25])).toEqual([
      [0, 0.5],
      [0.75, 1.25],
      [1.5, 2],
    ]);
  });

  it('draws ribbon, metre strokes and spokes as expected in number, all finite', () => {
    const arc: ArcPath = { startX: 0, startY: 0, heading: -0.5, radius: 8, turn: 1, length: 10 };
    const plain = arcGeometry(arc, look, frame);
    expect(plain.attributes.position.count).toBe(2 * 41);
    expect(plain.index!.count).toBe(6 * 40);
    const ticks = arcGeometry(arc, { ...look, strokes: 1 }, frame);
    expect(ticks.attributes.position.count - plain.attributes.position.count).toBe(4 * 11);
    const all = arcGeometry(arc, { ...look, strokes: 1, spokes: true, dash: [0.4, 0.2] }, frame);
    for (const name of ['position', 'across', 'share']) {
      expect(all.attributes[name].array.every(Number.isFinite)).toBe(true);
    }
    expect(Math.max(...all.index!.array)).toBeLessThan(all.attributes.position.count);
  });

  it('follows a way point by point and leaves the gaps out', () => {
    const way = (dash: number[]) =>
      pathGeometry(
        11,
        () => 1,
        i => i,
        dash,
        0.01,
        frame,
      );
    expect(way([]).index!.count).toBe(6 * 10);
    expect(way([1, 1]).index!.count).toBe(6 * 5);
    expect(way([]).attributes.across.getX(0)).toBeCloseTo(0.01, 9);
  });
});
