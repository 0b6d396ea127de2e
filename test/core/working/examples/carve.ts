import {
  biteAngleWorking,
  cornerAngleWorking,
  cosineRadiusWorking,
  type Equilibrium,
  holdWorking,
  lineLoadWorking,
  travelWorking,
  turnRadiusWorking,
  wedgeDepthWorking,
} from '../../../../core/carve/index.ts';

const ski = { sidecutRadius: 13.1, sidecutDepth: 0.0187, camber: 0.007, baseBevel: 0.01, sideAngle: 1.52 };

/** Only what the working reads of a solved equilibrium. */
const solved = {
  conditions: { edgeAngle: 0.9, load: 1200, hardness: 1e9, fore: 0 },
  turnRadius: 7.43,
  iterations: 19,
  residual: 2e-10,
} as Equilibrium;

export const examples = {
  cosineRadiusWorking: () => cosineRadiusWorking(ski, 0.9),
  travelWorking: () => travelWorking(ski, 0.9),
  biteAngleWorking: () => biteAngleWorking(ski, 0.9),
  cornerAngleWorking: () => cornerAngleWorking(ski),
  lineLoadWorking: () => [lineLoadWorking(0.002, 0.9, 1e9)],
  wedgeDepthWorking: () => wedgeDepthWorking(1000, 0.9, 1e9),
  turnRadiusWorking: () => turnRadiusWorking(solved),
  holdWorking: () => holdWorking(0.9, 0.02, 0.01, 0.8),
};
