import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { checkPair } from '../../../core/pair/index.ts';
import { larch } from './larch.ts';

const messages = (change: object): string[] => checkPair({ ...larch, ...change }).map(each => say(each));

describe('problems name the field, the value found and what is accepted', () => {
  it.each([
    [
      { waistWidthMm: 130 },
      'waistWidthMm: 130 is wider than tipWidthMm 117; the waist must be the narrowest',
    ],
    [
      { waistWidthMm: 104 },
      'waistWidthMm: 104 is as wide as tailWidthMm 104; the waist must be the narrowest',
    ],
    [{ tipWidthMm: undefined }, 'tipWidthMm: is missing; accepted is a number from 40 to 250 mm'],
    [{ tipWidthMm: '117' }, 'tipWidthMm: "117" is not accepted; accepted is a number from 40 to 250 mm'],
    [{ camberMm: 99 }, 'camberMm: 99 is not accepted; accepted is a number from 0 to 40 mm'],
    [{ name: '  ' }, 'name: "  " is not accepted; accepted is text of 1 to 120 characters'],
    [{ discipline: 'XC' }, 'discipline: "XC" is not accepted; accepted is SL, GS, SG, DH or other'],
    [{ format: 'other' }, 'format: "other" is not accepted; accepted is "turnwright.pair"'],
    [
      { contactLengthMm: 1550 },
      'contactLengthMm: 1550 is not shorter than lengthMm 1550; the contact length must be the shorter',
    ],
    [
      { waistFromTailMm: 1200 },
      'waistFromTailMm: 1200 is not accepted; accepted is 272 to 1088 mm for contactLengthMm 1360',
    ],
    [
      { bending: { kind: 'guess' } },
      'bending.kind: "guess" is not accepted; accepted is { kind: uniform | stations | formula | layup, … }',
    ],
    [
      { torsion: { kind: 'formula', newtonM2: '1+'.repeat(101) } },
      /^torsion\.newtonM2: .* accepted is text of 1 to 200 characters$/,
    ],
    [
      { edges: { sideAngleDeg: 3 } },
      'edges.sideAngleDeg: 3 is not accepted; accepted is a number from 80 to 90 degrees',
    ],
  ])('%o', (change, message) => {
    expect(messages(change)).toEqual([
      typeof message === 'string' ? message : expect.stringMatching(message),
    ]);
  });

  it('points into lists', () => {
    const bending = {
      kind: 'stations',
      stations: [
        { fromTailMm: 700, newtonM2: 300 },
        { fromTailMm: 700, newtonM2: 200 },
        { fromTailMm: 1400, newtonM2: 9 },
      ],
    };
    expect(checkPair({ ...larch, bending }).map(each => each.field)).toEqual([
      'bending.stations[1].fromTailMm',
      'bending.stations[2].fromTailMm',
    ]);
    const layer = { material: 'ash', youngsGPa: 12, shearGPa: 1.3, densityGPerCm3: 0.6 };
    const layup = {
      kind: 'layup',
      layers: [
        {
          ...layer,
          thicknessMm: [
            { fromTailMm: 0, thicknessMm: -1 },
            { fromTailMm: 9, thicknessMm: 1 },
          ],
        },
      ],
    };
    expect(checkPair({ ...larch, bending: layup }).map(each => each.field)).toEqual([
      'bending.layers[0].thicknessMm[0].thicknessMm',
    ]);
  });

  it('refuses three widths that would make a ski with no width between them', () => {
    const change = { tipWidthMm: 250, tailWidthMm: 250, waistWidthMm: 35, waistFromTailMm: 280 };
    expect(checkPair({ ...larch, ...change }).map(each => each.field)).toEqual(['waistFromTailMm']);
  });
});
