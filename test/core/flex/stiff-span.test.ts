import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bareBendingOf,
  bareTorsionOf,
  bendingCompliance,
  bendingOf,
  bendTest,
  bootedBendingOf,
  flexWorkings,
  RUN_IN,
  torsionOf,
  withSpan,
} from '../../../core/flex/index.ts';
import type { Plate } from '../../../core/pair/index.ts';
import { checkWorking } from '../../../core/working/index.ts';
import { invented } from './ski.ts';

const plate: Plate = { from: 0.4, to: 0.9, bending: 90, torsion: 25 };

describe('a stiff span', () => {
  it('adds what it is worth between its ends, nothing beyond, and never more', () => {
    const spanned = withSpan(() => 200, { from: 0.4, to: 0.9, newtonM2: 90 });
    for (const x of [0, 0.2, 0.4, 0.9, 1.3]) expect(spanned(x)).toBe(200);
    for (const x of [0.4 + RUN_IN, 0.6, 0.9 - RUN_IN]) expect(spanned(x)).toBeCloseTo(290, 9);
    expect(spanned(0.4 + RUN_IN / 2)).toBeCloseTo(245, 9);
    fc.assert(
      fc.property(fc.double({ min: -1, max: 3, noNaN: true }), x => {
        expect(spanned(x)).toBeGreaterThanOrEqual(200);
        expect(spanned(x)).toBeLessThanOrEqual(290);
      }),
    );
  });

  it('bends as two beams side by side: uniform ski, plate from end to end of the bench', () => {
    const long = withSpan(() => 200, { from: -1, to: 3, newtonM2: 100 });
    // PL³/48EI of a beam with both stiffnesses.
    expect(1 / bendingCompliance(long, 0, 1.4, 0.7)).toBeCloseTo((48 * 300) / 1.4 ** 3, 6);
  });
});

describe('a ski with a plate', () => {
  const bare = invented();
  const plated = invented({ plate });

  it('is stiffer over its plate in bending and in torsion, and as before elsewhere', () => {
    for (const x of [0.1, 0.35, 1, 1.3]) {
      expect(bendingOf(plated)!(x)).toBe(bendingOf(bare)!(x));
      expect(torsionOf(plated)!(x)).toBe(torsionOf(bare)!(x));
    }
    expect(bendingOf(plated)!(0.65) - bendingOf(bare)!(0.65)).toBeCloseTo(90, 9);
    expect(torsionOf(plated)!(0.65) - torsionOf(bare)!(0.65)).toBeCloseTo(25, 9);
  });

  it('keeps the stiffness that its file states for the bare ski', () => {
    expect(bareBendingOf(plated)!(0.65)).toBe(bendingOf(bare)!(0.65));
    expect(bareTorsionOf(plated)!(0.65)).toBe(torsionOf(bare)!(0.65));
  });

  it('is harder to bend and to flatten', () => {
    const [soft, stiff] = [bendTest(bare), bendTest(plated)];
    if (!soft.ok || !stiff.ok) throw new Error('both state a stiffness');
    expect(stiff.springNPerMm).toBeGreaterThan(soft.springNPerMm * 1.05);
    expect(stiff.firstTouchN).toBeGreaterThan(soft.firstTouchN);
  });

  it('has its plate explained', () => {
    const reported = flexWorkings(plated).find(each => each.key === 'flex.plate')!;
    expect(checkWorking(reported)).toEqual([]);
    expect(reported.result.value).toBeCloseTo(bendingOf(plated)!(0.65), 9);
    expect(flexWorkings(bare).some(each => each.key === 'flex.plate')).toBe(false);
  });

  it('stays rigid in torsion, or without a bending stiffness, where its file says so', () => {
    expect(torsionOf(invented({ plate, torsion: null }))).toBeNull();
    expect(bendingOf(invented({ plate, bending: null }))).toBeNull();
    expect(bootedBendingOf(invented({ soleBending: 100, bending: null }))).toBeNull();
  });

  it('is stiffer over the sole with a boot in its binding', () => {
    const booted = invented({ plate, soleBending: 120 });
    expect(bootedBendingOf(booted)!(0.64) - bendingOf(booted)!(0.64)).toBeCloseTo(120, 9);
    expect(bootedBendingOf(booted)!(0.82)).toBe(bendingOf(booted)!(0.82));
    expect(bootedBendingOf(bare)!(0.64)).toBe(bendingOf(bare)!(0.64));
  });
});
