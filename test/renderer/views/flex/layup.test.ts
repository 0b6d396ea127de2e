import { describe, expect, test } from 'vitest';
import { checkPair, type Pair } from '../../../../core/pair/index.ts';
import { layupBehind } from '../../../../renderer/views/flex/layup-behind.ts';
import {
  SIDES,
  startingLayup,
  varying,
  withLayer,
  withoutSide,
  withSide,
} from '../../../../renderer/views/flex/layup-edits.ts';
import { layupRows } from '../../../../renderer/views/flex/layup-rows.ts';

const STARTING = startingLayup();
const [edges, sidewalls] = SIDES.map(({ start }) => start);
const sided = { ...STARTING, edges, sidewalls } as typeof STARTING;

describe('sides of a layup', () => {
  test('what is offered is a pair that can be saved', () => {
    const pair = {
      format: 'turnwright.pair',
      version: 1,
      name: 'Invented',
      lengthMm: 1600,
      contactLengthMm: 1400,
      tipWidthMm: 116,
      waistWidthMm: 66,
      tailWidthMm: 104,
      bending: sided,
    } as Pair;
    expect(checkPair(pair)).toEqual([]);
  });

  test('a figure is changed and a side removed without touching the rest', () => {
    const marked = { ...sided, edges: { ...sided.edges!, grade: 'x' } } as typeof STARTING;
    const next = withSide(marked, 'edges', 'widthMm', 2.5);
    expect(next).toEqual({ ...marked, edges: { ...marked.edges, widthMm: 2.5 } });
    expect(withoutSide(withoutSide(next, 'edges'), 'sidewalls')).toEqual(STARTING);
  });
});

describe('the layers as a table', () => {
  test('a row a layer, one a station where the thickness varies, then the sides', () => {
    const layup = withLayer(sided, 2, { thicknessMm: varying(9, 1400) });
    const [headings, ...rows] = layupRows(layup);
    expect(rows.every(row => row.length === headings.length)).toBe(true);
    expect(rows.map(row => row[0])).toEqual([
      'layer 1',
      'layer 2',
      ...Array(5).fill('layer 3'),
      'layer 4',
      'layer 5',
      'steel edges',
      'sidewalls',
    ]);
    const cell = (row: number, heading: string) => rows[row][headings.indexOf(heading)];
    expect([cell(4, 'fromTailMm'), cell(4, 'thicknessMm'), cell(4, 'widthShare')]).toEqual([700, 9, 0.9]);
    expect([cell(9, 'widthOfOneMm'), cell(9, 'heightMm'), cell(9, 'youngsGPa')]).toEqual([2, 2, 210]);
    expect([cell(10, 'widthOfOneMm'), cell(10, 'heightMm'), cell(10, 'thicknessMm')]).toEqual([5, '', '']);
  });
});

describe('the layers shown', () => {
  const uniform = { kind: 'uniform', newtonM2: 200 } as const;
  const of = (bending: Pair['bending'], torsion: Pair['torsion']) => ({ bending, torsion }) as Pair;
  const copy = structuredClone(STARTING);

  test('one section stated for both is edited for both, unless it is taken apart', () => {
    const pair = of(STARTING, copy);
    expect(layupBehind(pair, 'bending', false)?.reaches).toEqual(['bending', 'torsion']);
    expect(layupBehind(pair, 'torsion', true)).toMatchObject({ reaches: ['torsion'], shared: true });
  });

  test('two sections are edited one at a time', () => {
    const pair = of(STARTING, sided);
    expect(layupBehind(pair, 'torsion', false)).toMatchObject({ layup: sided, reaches: ['torsion'] });
    expect(layupBehind(pair, 'bending', false)).toMatchObject({ layup: STARTING, shared: false });
  });

  test('the stiffness that has layers is shown, none where neither has', () => {
    expect(layupBehind(of(uniform, copy), 'bending', false)?.reaches).toEqual(['torsion']);
    expect(layupBehind(of(copy, undefined), 'torsion', false)?.reaches).toEqual(['bending']);
    expect(layupBehind(of(uniform, undefined), 'bending', false)).toBeNull();
  });
});
