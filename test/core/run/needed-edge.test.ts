import { describe, expect, it } from 'vitest';
import { cosineTurn, fastestHeld, leanIn, neededEdge } from '../../../core/run/index.ts';

const turn = { radius: 10, mass: 75, slope: 0, outerShare: 0.7 };
const DEGREE = Math.PI / 180;

describe('the edge angle a turn needs', () => {
  it('is acos(R/R_sc) by the cosine rule, at any speed', () => {
    for (const speed of [0, 5, 20]) {
      expect(neededEdge(cosineTurn(13), turn, speed)).toBeCloseTo(Math.acos(10 / 13), 9);
    }
  });

  it('is more for the longer sidecut', () => {
    const needed = [13, 20, 30].map(sidecut => neededEdge(cosineTurn(sidecut), turn, 10)!);
    expect(needed.map(each => Math.round(each / DEGREE))).toEqual([40, 60, 71]);
  });

  it('is none for a ski that turns tighter flat, or never so tight', () => {
    expect(neededEdge(cosineTurn(9), turn, 10)).toBeNull();
    expect(neededEdge(cosineTurn(80), turn, 10)).toBeNull();
  });

  it('follows the load of a ski that turns tighter the harder it is pressed', () => {
    const soft = { radius: (edge: number, load: number) => 13 * Math.cos(edge) * (1 - load / 20000) };
    expect(neededEdge(soft, turn, 15)!).toBeLessThan(neededEdge(soft, turn, 5)!);
  });

  it('is held up to the speed where the lean reaches it: v² = g R tan(θ − b)', () => {
    const edge = Math.acos(10 / 13);
    for (const bevel of [0, 0.5 * DEGREE]) {
      expect(fastestHeld(cosineTurn(13), turn, bevel)).toBeCloseTo(
        Math.sqrt(9.81 * 10 * Math.tan(edge - bevel)),
        5,
      );
    }
    const speed = fastestHeld(cosineTurn(13), turn, 0)!;
    expect(leanIn(turn, speed)).toBeCloseTo(edge, 6);
  });

  it('cannot be held at any speed by a ski that cannot carve it', () => {
    expect(fastestHeld(cosineTurn(9), turn, 0)).toBeNull();
  });
});
