import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { checkPair, leastWidthMm, type Pair, readPair, skiOf, writePair } from '../../../core/pair/index.ts';

const wood = { material: 'wood', thicknessMm: 10, youngsGPa: 11, shearGPa: 1, densityGPerCm3: 0.6 };
const edges = { widthMm: 2, heightMm: 1.8, youngsGPa: 210, shearGPa: 80, densityGPerCm3: 7.85, grade: 'x' };
const sidewalls = { widthMm: 6, youngsGPa: 2.2, shearGPa: 0.8, densityGPerCm3: 1.05 };

/** Invented. */
const pairWith = (sides: object, change: object = {}): Pair =>
  ({
    format: 'turnwright.pair',
    version: 1,
    name: 'Hazel 160',
    lengthMm: 1600,
    contactLengthMm: 1400,
    tipWidthMm: 116,
    waistWidthMm: 66,
    tailWidthMm: 104,
    bending: { kind: 'layup', layers: [wood], ...sides },
    ...change,
  }) as Pair;

const messages = (pair: Pair) => checkPair(pair).map(each => say(each));

describe('steel edges and sidewalls of a layup in the pair file', () => {
  it('are read, kept with fields of others, and given in SI', () => {
    const read = readPair(JSON.stringify(pairWith({ edges, sidewalls })));
    if (!read.ok) throw new Error(say(read.problems[0]));
    expect(JSON.parse(writePair(read.pair)).bending).toEqual({
      kind: 'layup',
      layers: [wood],
      edges,
      sidewalls,
    });
    const { bending } = skiOf(read.pair);
    if (bending?.kind !== 'layup') throw new Error('no layup');
    expect(bending.layup.edges).toEqual({
      width: 2e-3,
      height: expect.closeTo(1.8e-3, 12),
      youngs: 210e9,
      shear: 80e9,
      density: 7850,
    });
    expect(bending.layup.sidewalls).toEqual({
      width: 6e-3,
      youngs: 2.2e9,
      shear: 0.8e9,
      density: 1050,
    });
    const bare = skiOf(pairWith({})).bending;
    expect(bare?.kind === 'layup' && Object.keys(bare.layup)).toEqual(['layers']);
  });

  it('name field, value and what is accepted where they are out of range', () => {
    expect(messages(pairWith({ edges: { ...edges, heightMm: 0 } }))).toEqual([
      'bending.edges.heightMm: 0 is not accepted; accepted is a number from 0.1 to 20 mm',
    ]);
    expect(messages(pairWith({ sidewalls: { ...sidewalls, youngsGPa: '2' } }))).toEqual([
      'bending.sidewalls.youngsGPa: "2" is not accepted; accepted is a number from 0.0001 to 1000 GPa',
    ]);
    const { heightMm: _, ...flat } = edges;
    expect(messages(pairWith({ edges: flat }))[0]).toMatch(/^bending\.edges\.heightMm: is missing/);
    expect(messages(pairWith({ edges: 3 }))[0]).toMatch(
      /^bending\.edges: 3 is not accepted; accepted is \{ widthMm, heightMm/,
    );
  });

  it('leave the layers some width where the ski is narrowest', () => {
    const accepted =
      'bending.sidewalls.widthMm: 33 is not accepted; accepted is less than 33 mm, half the width of the ski where it is narrowest';
    expect(messages(pairWith({ sidewalls: { ...sidewalls, widthMm: 33 } }))).toEqual([
      accepted.replace('than 33 mm', `than ${Math.round(leastWidthMm(pairWith({})) * 5) / 10} mm`),
    ]);
    expect(messages(pairWith({ sidewalls: { ...sidewalls, widthMm: 32 } }))).toEqual([]);
  });

  it('are measured against the ski, not told of one whose widths make none', () => {
    const broken = pairWith({ sidewalls: { ...sidewalls, widthMm: 50 } }, { waistWidthMm: 120 });
    expect(checkPair(broken).map(each => each.field)).toEqual(['waistWidthMm']);
  });
});

describe('the narrowest width of a ski', () => {
  it('is where the parabola through the three widths is lowest', () => {
    for (const waistFromTailMm of [undefined, 500, 700, 900]) {
      const pair = pairWith({}, { waistFromTailMm });
      const at = (waistFromTailMm ?? 700) / 1400;
      // Newton's form through tail, waist and tip, tried at every millimetre.
      const first = (66 - 104) / at;
      const second = (116 - 66) / (1 - at) - first;
      const tried = Array.from({ length: 1401 }, (_, i) => {
        const s = i / 1400;
        return 104 + s * (first + second * (s - at));
      });
      expect(leastWidthMm(pair)).toBeCloseTo(Math.min(...tried), 3);
    }
  });

  it('is the least of five stations, and the parabola of fewer', () => {
    const widthStations = [0, 350, 700, 1050, 1400].map((fromTailMm, i) => ({
      fromTailMm,
      widthMm: [104, 72, 64.5, 75, 116][i],
    }));
    expect(leastWidthMm(pairWith({}, { widthStations }))).toBe(64.5);
    const few = pairWith({}, { widthStations: widthStations.slice(0, 4) });
    expect(leastWidthMm(few)).toBe(leastWidthMm(pairWith({})));
  });
});
