import {
  biteAngleWorking,
  type CarvingSki,
  cornerAngleWorking,
  cosineRadiusWorking,
  grooveSolver,
  holdWorking,
  lineLoadWorking,
  partRadiusWorking,
  penetrationWorking,
  travelWorking,
  turnRadiusWorking,
  twistWorking,
  wedgeDepthWorking,
} from '../../../../core/carve/index.ts';

const ski = { sidecutRadius: 13.1, sidecutDepth: 0.0187, camber: 0.007, baseBevel: 0.01, sideAngle: 1.52 };

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
const solver = grooveSolver(twisting);
const inGroove = solver.solve({ edgeAngle: 0.9, load: 1200, hardness: 1e9, fore: 0 });
if (!inGroove.ok) throw new Error(JSON.stringify(inGroove.reason));
/** Too stiff for its load: no part of its edge is loaded far enough to tell a radius. */
const onItsEnds = solver.solve({ edgeAngle: 1.2, load: 200, hardness: 1e10, fore: 0, rebound: 1e-4 });
if (!onItsEnds.ok) throw new Error(JSON.stringify(onItsEnds.reason));
if (!onItsEnds.rear.tooShort || !onItsEnds.front.tooShort) throw new Error('not on its ends');
export const twistOfExample = { ski: twisting, equilibrium: inGroove };

export const examples = {
  cosineRadiusWorking: () => cosineRadiusWorking(ski, 0.9),
  travelWorking: () => travelWorking(ski, 0.9),
  biteAngleWorking: () => biteAngleWorking(ski, 0.9),
  cornerAngleWorking: () => cornerAngleWorking(ski),
  lineLoadWorking: () => [lineLoadWorking(0.002, 0.9, 1e9)],
  wedgeDepthWorking: () => wedgeDepthWorking(1000, 0.9, 1e9),
  turnRadiusWorking: () => turnRadiusWorking(inGroove),
  partRadiusWorking: () =>
    (['rear', 'front'] as const).flatMap(part => [
      partRadiusWorking(inGroove, part),
      partRadiusWorking(onItsEnds, part),
    ]),
  penetrationWorking: () => penetrationWorking(twisting, inGroove),
  twistWorking: () => (['tip', 'tail'] as const).map(end => twistWorking(twisting, inGroove, end)!),
  holdWorking: () => holdWorking(0.9, 0.02, 0.01, 0.8),
};
