import { describe, expect, it } from 'vitest';
import { checkPair, type Pair, readPair, skiOf } from '../../../core/pair/index.ts';
import { larch, least } from './larch.ts';

describe('one ski in SI units', () => {
  it('converts every field', () => {
    const read = readPair(JSON.stringify({ ...larch, bootSoleMm: 290 }));
    if (!read.ok) throw new Error('larch must read');
    const ski = skiOf(read.pair);
    expect(ski).toMatchObject({ discipline: 'SL', mass: 1.9, widthStations: null, torsion: larch.torsion });
    expect(ski.contactLength).toBeCloseTo(1.36, 12);
    expect(ski.waistStation).toBeCloseTo(0.64, 12);
    expect(ski.soleLength).toBeCloseTo(0.29, 12);
    expect(ski.sideAngle).toBeCloseTo((87 * Math.PI) / 180, 12);
    expect(ski.bending).toMatchObject({
      kind: 'stations',
      stations: [{ x: 0, newtonM2: 40 }, { newtonM2: 260 }],
    });
  });

  it('fills in the defaults of the file format', () => {
    expect(checkPair(least)).toEqual([]);
    const ski = skiOf(least as Pair);
    expect(ski).toMatchObject({
      discipline: 'other',
      waistStation: null,
      camber: 0,
      mass: null,
      bending: null,
      torsion: null,
    });
    expect(ski.bootCentre).toBeCloseTo(0.47 * 1.36, 12);
    expect(ski.soleLength).toBeCloseTo(0.3, 12);
    expect(ski.baseBevel).toBe(0);
    expect(ski.sideAngle).toBeCloseTo(Math.PI / 2, 12);
  });

  it('turns a layup into SI', () => {
    const layers = [
      {
        material: 'aluminium',
        thicknessMm: 0.5,
        youngsGPa: 71.7,
        shearGPa: 26.9,
        densityGPerCm3: 2.8,
        widthShare: 0.9,
      },
      {
        material: 'ash',
        thicknessMm: [
          { fromTailMm: 0, thicknessMm: 3 },
          { fromTailMm: 640, thicknessMm: 10 },
        ],
        youngsGPa: 12,
        shearGPa: 1.31,
        densityGPerCm3: 0.6,
      },
    ];
    const pair = { ...larch, bending: { kind: 'layup', layers } };
    expect(checkPair(pair)).toEqual([]);
    const bending = skiOf(pair as unknown as Pair).bending;
    if (bending?.kind !== 'layup') throw new Error('a layup must stay one');
    const [metal, wood] = bending.layup.layers;
    expect(metal.youngs).toBeCloseTo(71.7e9, 0);
    expect(metal).toMatchObject({ thickness: 0.0005, widthShare: 0.9, density: 2800 });
    expect(wood.widthShare).toBe(1);
    expect(wood.thickness).toEqual([
      { x: 0, thickness: 0.003 },
      { x: 0.64, thickness: 0.01 },
    ]);
  });
});
