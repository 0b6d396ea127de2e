import * as z from 'zod';
import { accepting, acceptingShape, list, quantity, text } from './fields.ts';

const newtonM2 = quantity(0.1, 20000, 'N·m²', 'Stiffness EI or GJ');
const fromTailMm = quantity(0, 2500, 'mm', 'Distance from the rear contact point');

const thicknessMm = quantity(0.01, 60, 'mm', 'Layer thickness');

const thickness = z.union(
  [thicknessMm, list(z.looseObject({ fromTailMm, thicknessMm }), 2, 500, 'pair.thicknessStations')],
  accepting({
    key: 'pair.thickness',
    values: { from: 0.01, to: 60, station: '{ fromTailMm, thicknessMm }' },
  }),
);

const elasticConstants = {
  youngsGPa: quantity(0.0001, 1000, 'GPa', "Young's modulus along the ski"),
  shearGPa: quantity(0.0001, 500, 'GPa', 'Shear modulus in the plane of the layer'),
  densityGPerCm3: quantity(0.01, 25, 'g/cm³', 'Density'),
};

const layer = z.looseObject(
  {
    material: text(1, 80, 'Material'),
    thicknessMm: thickness,
    ...elasticConstants,
    widthShare: quantity(0.01, 1, '', 'Width as a share of the local ski width; 1 when absent').optional(),
  },
  acceptingShape('{ material, thicknessMm, youngsGPa, shearGPa, densityGPerCm3, widthShare? }'),
);

const steelEdges = z.looseObject(
  {
    widthMm: quantity(0.1, 20, 'mm', 'Width of one steel edge'),
    heightMm: quantity(0.1, 20, 'mm', 'Height of the steel edge over the base'),
    ...elasticConstants,
  },
  acceptingShape('{ widthMm, heightMm, youngsGPa, shearGPa, densityGPerCm3 }'),
);

const sidewalls = z.looseObject(
  { widthMm: quantity(0.1, 60, 'mm', 'Width of one sidewall'), ...elasticConstants },
  acceptingShape('{ widthMm, youngsGPa, shearGPa, densityGPerCm3 }'),
);

/** A stiffness along the ski as the file states it. Whether a formula can be evaluated is for flex to say. */
export const stiffnessSchema = z.discriminatedUnion(
  'kind',
  [
    z.looseObject({ kind: z.literal('uniform'), newtonM2 }),
    z.looseObject({
      kind: z.literal('stations'),
      stations: list(
        z.looseObject({ fromTailMm, newtonM2 }, acceptingShape('{ fromTailMm, newtonM2 }')),
        2,
        500,
        'pair.stiffnessStations',
      ),
    }),
    z.looseObject({
      kind: z.literal('formula'),
      newtonM2: text(1, 200, 'Expression in s, 0 at the rear contact point and 1 at the front'),
    }),
    z.looseObject({
      kind: z.literal('layup'),
      layers: list(layer, 1, 40, 'pair.layersBaseFirst'),
      edges: steelEdges.optional().describe('Steel edges along both sides; none when absent.'),
      sidewalls: sidewalls
        .optional()
        .describe('Sidewalls along both sides, above the steel edges or the base; none when absent.'),
    }),
  ],
  acceptingShape('{ kind: uniform | stations | formula | layup, … }'),
);

export type PairStiffness = z.infer<typeof stiffnessSchema>;
