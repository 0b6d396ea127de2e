import { describe, expect, it } from 'vitest';
import { bendingOf } from '../../../../core/flex/index.ts';
import { checkPair, type Pair, skiOf } from '../../../../core/pair/index.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';
import { asIdentified } from '../../../../renderer/views/flex/stiffness-edits.ts';

const plate = { fromTailMm: 390, lengthMm: 480, newtonM2: 60, torsionNewtonM2: 15 };
const stations = [
  { fromTailMm: 0, newtonM2: 70 },
  { fromTailMm: 640, newtonM2: 330 },
  { fromTailMm: 1360, newtonM2: 62 },
];

describe('a profile found on the bench', () => {
  it('has the plate in it, which then adds nothing more to EI and stays on the ski', () => {
    const pair: Pair = { ...demoPairs[0]!, plate };
    const taken = { ...pair, ...asIdentified(pair, stations) } as Pair;
    expect(checkPair(taken)).toEqual([]);
    expect(bendingOf(skiOf(taken))!(0.64)).toBeCloseTo(330, 9);
    expect(taken.plate).toEqual({ ...plate, newtonM2: 0 });
  });

  it('gives a pair without a plate none', () => {
    expect(asIdentified(demoPairs[0]!, stations)).toEqual({ bending: { kind: 'stations', stations } });
  });
});
