import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { checkPair, type Pair, readPair, skiOf, writePair } from '../../../core/pair/index.ts';
import { larch } from './larch.ts';

const plate = { fromTailMm: 400, lengthMm: 480, newtonM2: 80, torsionNewtonM2: 20 };
const withPlate = (change: object) => ({ ...larch, plate: { ...plate, ...change } });

describe('a plate in the pair file', () => {
  it('reaches the ski in SI', () => {
    const pair = withPlate({}) as unknown as Pair;
    expect(checkPair(pair)).toEqual([]);
    expect(skiOf(pair).plate).toEqual({ from: 0.4, to: 0.88, bending: 80, torsion: 20 });
  });

  it('adds no torsional stiffness where none is given', () => {
    expect(skiOf(withPlate({ torsionNewtonM2: undefined }) as unknown as Pair).plate?.torsion).toBe(0);
  });

  it('is kept on saving, with what another program wrote beside it', () => {
    const read = readPair(JSON.stringify(withPlate({ rubberMm: 3 })));
    if (!read.ok) throw new Error(say(read.problems[0]));
    const again = JSON.parse(writePair(read.pair));
    expect(again.plate).toEqual({ ...plate, rubberMm: 3 });
    expect(Object.keys(again).indexOf('plate')).toBe(Object.keys(again).indexOf('torsion') + 1);
  });

  it('is one that pairs without it do not miss', () => {
    const ski = skiOf(larch as unknown as Pair);
    expect('plate' in ski).toBe(false);
    expect('soleBending' in ski).toBe(false);
  });

  it.each([
    [{ lengthMm: undefined }, 'plate.lengthMm: is missing; accepted is a number from 100 to 1200 mm'],
    [{ lengthMm: 40 }, 'plate.lengthMm: 40 is not accepted; accepted is a number from 100 to 1200 mm'],
    [{ newtonM2: -1 }, 'plate.newtonM2: -1 is not accepted; accepted is a number from 0 to 20000 N·m²'],
    [
      { torsionNewtonM2: '20' },
      'plate.torsionNewtonM2: "20" is not accepted; accepted is a number from 0 to 20000 N·m²',
    ],
    [
      { fromTailMm: 1000 },
      'plate.lengthMm: 480 from 1000 reaches past contactLengthMm 1360; at most 360 mm fits',
    ],
    [
      { fromTailMm: 1300 },
      'plate.fromTailMm: 1300 is not accepted; accepted is at most 1260 mm, so that 100 mm of plate fit contactLengthMm 1360',
    ],
  ])('is refused with field, found and accepted: %o', (change, message) => {
    expect(checkPair(withPlate(change)).map(each => say(each))).toEqual([message]);
  });

  it('is refused when it is no plate', () => {
    expect(say(checkPair({ ...larch, plate: 80 })[0])).toBe(
      'plate: 80 is not accepted; accepted is { fromTailMm, lengthMm, newtonM2, torsionNewtonM2? }',
    );
  });
});

describe('the boot on the ski', () => {
  it('stands as high as the file says, else as high as the rules allow', () => {
    const reported = { ...larch, standingHeightMm: 46, bootSoleHeightMm: 40 } as unknown as Pair;
    expect(skiOf(reported)).toMatchObject({ standingHeight: 0.046, bootSoleHeight: 0.04 });
    const silent = skiOf(larch as unknown as Pair);
    expect(silent.standingHeight + silent.bootSoleHeight).toBeCloseTo(0.093, 12);
  });

  it('stiffens the ski over its sole by what the file says', () => {
    expect(skiOf({ ...larch, bootSoleNewtonM2: 150 } as unknown as Pair).soleBending).toBe(150);
    expect(say(checkPair({ ...larch, bootSoleNewtonM2: 1e6 })[0])).toBe(
      'bootSoleNewtonM2: 1000000 is not accepted; accepted is a number from 0 to 20000 N·m²',
    );
  });
});
