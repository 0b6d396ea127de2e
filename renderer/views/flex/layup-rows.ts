import { type LayupStiffness, SIDES } from './layup-edits.ts';

type Cell = string | number;

const HEADINGS = [
  'part',
  'material',
  'fromTailMm',
  'thicknessMm',
  'widthShare',
  'widthOfOneMm',
  'heightMm',
  'youngsGPa',
  'shearGPa',
  'densityGPerCm3',
];

const SIDE_PARTS = { edges: 'steel edges', sidewalls: 'sidewalls' };

/**
 * The layup as a table, headings first: layers base first, one row a thickness station where the thickness
 * varies along the ski, then steel edges and sidewalls. A cell that does not apply is empty.
 */
export function layupRows({ layers, ...sides }: LayupStiffness): Cell[][] {
  const rows = layers.flatMap((layer, at): Cell[][] => {
    const { material, thicknessMm, youngsGPa, shearGPa, densityGPerCm3, widthShare = 1 } = layer;
    const stations =
      typeof thicknessMm === 'number'
        ? [{ fromTailMm: '', thicknessMm }]
        : thicknessMm.map(each => ({ ...each }));
    return stations.map(({ fromTailMm, thicknessMm: thick }) => [
      `layer ${at + 1}`,
      material,
      fromTailMm,
      thick,
      widthShare,
      '',
      '',
      youngsGPa,
      shearGPa,
      densityGPerCm3,
    ]);
  });
  for (const { name } of SIDES) {
    const side = sides[name];
    if (!side) continue;
    const height = name === 'edges' ? (sides.edges?.heightMm ?? '') : '';
    const { widthMm, youngsGPa, shearGPa, densityGPerCm3 } = side;
    rows.push([SIDE_PARTS[name], '', '', '', '', widthMm, height, youngsGPa, shearGPa, densityGPerCm3]);
  }
  return [HEADINGS, ...rows];
}
