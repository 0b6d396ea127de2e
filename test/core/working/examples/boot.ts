import {
  angulationWorking,
  type BootQuestion,
  bindingLoadWorkings,
  bootMomentWorking,
  bootWorkings,
  edgeAngleLostWorking,
  footBedWorking,
  freeAngulationWorking,
  pushWorking,
  solvedBootMomentWorking,
  solvedFreeAngulationWorking,
} from '../../../../core/boot/index.ts';

const question: BootQuestion = {
  normal: 1200,
  edgeAngle: 1.05,
  lean: 0.7,
  halfWaist: 0.033,
  standingHeight: 0.05,
  bootSoleHeight: 0.043,
  heightsStated: false,
  stiffness: 1100,
  centre: { aside: 0.041, rise: 0.014 },
};
const turn = { load: 1300, lean: -0.7, edgeAngle: -1.05 };
const boot = { height: 0.05, halfWaist: 0.033, friction: 0.06 };

export const examples = {
  angulationWorking: () => angulationWorking(question),
  pushWorking: () => pushWorking(question),
  footBedWorking: () => [footBedWorking(question), footBedWorking({ ...question, heightsStated: true })],
  bootMomentWorking: () => bootMomentWorking(question),
  solvedFreeAngulationWorking: () => solvedFreeAngulationWorking(question)!,
  solvedBootMomentWorking: () => solvedBootMomentWorking(question)!,
  freeAngulationWorking: () => freeAngulationWorking(question),
  edgeAngleLostWorking: () => [
    edgeAngleLostWorking(question),
    edgeAngleLostWorking({ ...question, centre: null }),
  ],
  bootWorkings: () => bootWorkings(question),
  bindingLoadWorkings: () => [
    ...bindingLoadWorkings(turn, boot),
    ...bindingLoadWorkings(
      { ...turn, edgeAngle: 0.9 },
      { ...boot, centre: { fore: 0.02, aside: 0.04, rise: 0.01 } },
    ),
  ],
};
