import { beforeEach, describe, expect, it } from 'vitest';
import { bootOf } from '../../../renderer/answers/boot.ts';
import { demoPairs } from '../../../renderer/demo/index.ts';
import {
  activePair,
  changeConditions,
  chooseOnly,
  DEFAULT_CONDITIONS,
  EMPTY_PROJECT,
  load,
} from '../../../renderer/state/index.ts';

const DEGREE = Math.PI / 180;
const { bending: _, torsion: __, ...bare } = demoPairs[0]!;

function show(pair: (typeof demoPairs)[number]) {
  load(chooseOnly(['one'])({ ...EMPTY_PROJECT, rack: [{ id: 'one', pair, saved: pair }] }));
  return activePair.value!;
}

describe('the boot on a pair on edge', () => {
  beforeEach(() => load(EMPTY_PROJECT));

  it('stands as high as its pair says, and at the usual height where it says nothing', () => {
    const usual = bootOf(show(bare))!;
    expect(usual.question).toMatchObject({ heightsStated: false, centre: null });
    expect(usual.answer.freeAngulation).toBeCloseTo(Math.atan(bare.waistWidthMm / 2 / 93), 9);
    const low = bootOf(show({ ...bare, standingHeightMm: 30, bootSoleHeightMm: 40 }))!;
    expect(low.question.heightsStated).toBe(true);
    expect(low.answer.freeAngulation).toBeCloseTo(Math.atan(bare.waistWidthMm / 2 / 70), 9);
  });

  it('carries more as the angulation goes: faster, the lean comes nearer the edge angle', () => {
    const pair = show(bare);
    changeConditions('Speed', { speedKmh: 15 });
    const slow = bootOf(pair)!.answer;
    changeConditions('Speed', { speedKmh: 35 });
    const fast = bootOf(pair)!.answer;
    expect(fast.angulation).toBeLessThan(slow.angulation);
    expect(fast.moment).toBeGreaterThan(slow.moment);
  });

  it('gives away edge angle by the stiffness that was set', () => {
    const pair = show(bare);
    const { answer } = bootOf(pair)!;
    expect(answer.edgeAngleLost / DEGREE).toBeCloseTo(
      answer.moment / DEFAULT_CONDITIONS.bootStiffnessNmPerDeg,
      9,
    );
    changeConditions('Boot stiffness', { bootStiffnessNmPerDeg: 40 });
    expect(bootOf(pair)!.answer.edgeAngleLost).toBeCloseTo(answer.edgeAngleLost / 2, 12);
  });

  it('is not asked where there is no turn', () => {
    const broken = { ...bare, bending: { kind: 'formula' as const, newtonM2: '200 - 400*s' } };
    expect(bootOf(show(broken))).toBeNull();
  });
});
