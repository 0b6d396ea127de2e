import type { PairStiffness } from '../../../core/pair/index.ts';
import { t } from '../../state/index.ts';

export type LayupStiffness = Extract<PairStiffness, { kind: 'layup' }>;
export type Layer = LayupStiffness['layers'][number];
export type SideName = 'edges' | 'sidewalls';
export type SideField = keyof typeof STEEL;

/** Round textbook figures to start from, of no product. */
const STEEL = { widthMm: 2, heightMm: 2, youngsGPa: 210, shearGPa: 80, densityGPerCm3: 7.85 };
const PLASTIC = { widthMm: 5, youngsGPa: 2.2, shearGPa: 0.8, densityGPerCm3: 1.05 };

export const SIDES = [
  { name: 'edges', start: STEEL },
  { name: 'sidewalls', start: PLASTIC },
] as const;

/** One figure of a side changed; everything else, unknown fields too, stays. */
export const withSide = (
  layup: LayupStiffness,
  side: SideName,
  field: SideField,
  value: number,
): LayupStiffness => ({ ...layup, [side]: { ...layup[side], [field]: value } });

export function withoutSide(layup: LayupStiffness, side: SideName): LayupStiffness {
  const { [side]: _, ...rest } = layup;
  return rest as LayupStiffness;
}

export const withLayer = (layup: LayupStiffness, at: number, change: Partial<Layer>): LayupStiffness => ({
  ...layup,
  layers: layup.layers.map((layer, i) => (i === at ? { ...layer, ...change } : layer)),
});

export const withoutLayer = (layup: LayupStiffness, at: number): LayupStiffness => ({
  ...layup,
  layers: layup.layers.filter((_, i) => i !== at),
});

/** A layer one place nearer the base (−1) or the topsheet (+1). */
export function movedLayer(layup: LayupStiffness, at: number, by: -1 | 1): LayupStiffness {
  const layers = [...layup.layers];
  const [layer] = layers.splice(at, 1);
  layers.splice(at + by, 0, layer);
  return { ...layup, layers };
}

/** A copy of the layer on top of it: quicker to change than an empty one. */
export function copiedLayer(layup: LayupStiffness, at: number): LayupStiffness {
  const layers = [...layup.layers];
  layers.splice(at + 1, 0, { ...layers[at] });
  return { ...layup, layers };
}

/** A thickness that varies along the ski, starting from one that does not: five stations, all alike. */
export function varying(thicknessMm: number, contactLengthMm: number): Layer['thicknessMm'] {
  return [0, 0.25, 0.5, 0.75, 1].map(share => ({
    fromTailMm: Math.round(share * contactLengthMm),
    thicknessMm,
  }));
}

/**
 * A plain symmetric section to start from where a pair has none: base, glass, wooden core, glass, topsheet.
 * Round textbook figures of no product.
 */
export const startingLayup = (): LayupStiffness => ({
  kind: 'layup',
  layers: [
    {
      material: t('flex.material.base'),
      thicknessMm: 1.2,
      youngsGPa: 0.8,
      shearGPa: 0.28,
      densityGPerCm3: 0.94,
    },
    { material: t('flex.material.glass'), thicknessMm: 0.6, youngsGPa: 40, shearGPa: 4, densityGPerCm3: 1.9 },
    {
      material: t('flex.material.wood'),
      thicknessMm: 9,
      youngsGPa: 11,
      shearGPa: 1,
      densityGPerCm3: 0.6,
      widthShare: 0.9,
    },
    { material: t('flex.material.glass'), thicknessMm: 0.6, youngsGPa: 40, shearGPa: 4, densityGPerCm3: 1.9 },
    {
      material: t('flex.material.topsheet'),
      thicknessMm: 0.5,
      youngsGPa: 2.2,
      shearGPa: 0.8,
      densityGPerCm3: 1.05,
    },
  ],
});
