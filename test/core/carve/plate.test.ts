import { describe, expect, it } from 'vitest';
import { carvingSkiOf, grooveSolver } from '../../../core/carve/index.ts';
import type { Ski } from '../../../core/pair/index.ts';
import { invented } from '../flex/ski.ts';
import { hardness, radians } from './demo.ts';

const request = { edgeAngle: radians(50), load: 1200, hardness: hardness(1), fore: 0 };

function solved(change: Partial<Ski>, elements?: number) {
  const carving = carvingSkiOf(invented(change));
  if (!carving.ok) throw new Error(JSON.stringify(carving.reason));
  const answer = grooveSolver(carving.ski, { elements }).solve(request);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer;
}

const plate = { from: 0.38, to: 0.9, bending: 150, torsion: 40 };
/** Bend of the base over its middle half: how far the middle lies below the line through its quarters. */
function bend({ x, height }: ReturnType<typeof solved>): number {
  const at = (place: number) => height[x.findIndex(each => each >= place)];
  return 0.5 * (at(0.34) + at(1.02)) - at(0.68);
}

describe('a ski with a plate in its groove', () => {
  it('bends less under it than the bare ski, and less still with a stiff sole', () => {
    const bare = solved({});
    const plated = solved({ plate });
    const booted = solved({ plate, soleBending: 400 });
    expect(bend(plated)).toBeLessThan(bend(bare));
    expect(bend(booted)).toBeLessThan(bend(plated));
  });

  it('is the bare ski again when plate and sole add nothing', () => {
    const nothing = solved({ plate: { ...plate, bending: 0, torsion: 0 }, soleBending: 0 });
    expect(nothing).toEqual(solved({}));
  });

  it('turns on the same radius to 0.2 % with twice the elements, ends of the plate and all', () => {
    const coarse = solved({ plate, soleBending: 400 });
    const fine = solved({ plate, soleBending: 400 }, 240);
    expect(Math.abs(coarse.turnRadius / fine.turnRadius - 1)).toBeLessThan(0.002);
    expect(Math.abs(coarse.turnRadius / fine.turnRadius - 1)).toBeLessThan(0.002);
  });

  it('twists less beyond the sole where the plate reaches further', () => {
    const slack = solved({ plate: { ...plate, torsion: 0 } });
    expect(solved({ plate }).twistTip).toBeLessThan(slack.twistTip);
  });
});
