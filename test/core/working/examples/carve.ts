import {
  biteAngleWorking,
  type CarvingSki,
  cornerAngleWorking,
  cosineRadiusWorking,
  type Equilibrium,
  grooveSolver,
  holdWorking,
  lineLoadWorking,
  penetrationWorking,
  travelWorking,
  turnRadiusWorking,
  twistWorking,
  wedgeDepthWorking,
  wholeRadiusWorking,
} from '../../../../core/carve/index.ts';

const ski = { sidecutRadius: 13.1, sidecutDepth: 0.0187, camber: 0.007, baseBevel: 0.01, sideAngle: 1.52 };

/** Only what the working reads of a solved equilibrium. */
const solved = {
  conditions: { edgeAngle: 0.9, load: 1200, hardness: 1e9, fore: 0 },
  turnRadius: 7.43,
  iterations: 19,
  residual: 2e-10,
} as Equilibrium;

/** A ski cut to a parabola, and its groove. */
const twisting: CarvingSki = {
  edge: {
    length: 1.4,
    halfWidth: x => 0.033 + 0.019 * (2 * (x / 1.4) - 1) ** 2,
    slope: x => (0.019 * 4 * (2 * (x / 1.4) - 1)) / 1.4,
    curvature: () => (0.019 * 8) / 1.4 ** 2,
  },
  bending: () => 260,
  torsion: x => 60 + 30 * x,
  camber: 0.006,
  bootCentre: 0.66,
  soleLength: 0.3,
};
const inGroove = grooveSolver(twisting).solve({ edgeAngle: 0.9, load: 1200, hardness: 1e9, fore: 0 });
if (!inGroove.ok) throw new Error(inGroove.reason);
export const twistOfExample = { ski: twisting, equilibrium: inGroove };

export const examples = {
  cosineRadiusWorking: () => cosineRadiusWorking(ski, 0.9),
  travelWorking: () => travelWorking(ski, 0.9),
  biteAngleWorking: () => biteAngleWorking(ski, 0.9),
  cornerAngleWorking: () => cornerAngleWorking(ski),
  lineLoadWorking: () => [lineLoadWorking(0.002, 0.9, 1e9)],
  wedgeDepthWorking: () => wedgeDepthWorking(1000, 0.9, 1e9),
  turnRadiusWorking: () => turnRadiusWorking(solved),
  wholeRadiusWorking: () => wholeRadiusWorking(inGroove),
  penetrationWorking: () => penetrationWorking(twisting, inGroove),
  twistWorking: () => (['tip', 'tail'] as const).map(end => twistWorking(twisting, inGroove, end)!),
  holdWorking: () => holdWorking(0.9, 0.02, 0.01, 0.8),
};
