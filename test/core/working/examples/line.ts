import { cosineTurnSurface } from '../../../../core/carve/index.ts';
import { rhythm, rhythmWorkings } from '../../../../core/line/index.ts';
import { REFERENCE_SKIER } from '../../line/questions.ts';

const found = rhythm(
  {
    conditions: {
      ski: cosineTurnSurface(18),
      contactLength: 1.5,
      baseBevel: 0.0087,
      outerShare: 0.7,
      skier: REFERENCE_SKIER,
      friction: 0.05,
      scrape: 1,
      wallStrength: Number.POSITIVE_INFINITY,
      airDensity: 1.1,
      slope: { sine: () => 0.28, curvature: () => 0 },
      clearance: 0.6,
    },
    spacing: 22,
    offset: 5,
  },
  { stages: 24, beginnings: 1 },
);
if (!found.ok) throw new Error(`${found.reason}: ${found.limit}`);

export const examples = {
  rhythmWorkings: () => rhythmWorkings(found),
};
