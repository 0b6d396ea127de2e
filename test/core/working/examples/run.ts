import {
  cosineTurn,
  explainChain,
  idealRadiusWorking,
  speedCeilingWorking,
  terminalSpeedWorking,
} from '../../../../core/run/index.ts';

const question = {
  sidecutRadius: 13,
  turn: cosineTurn(13),
  edgeAngle: 0.9,
  speed: 11,
  mass: 75,
  slope: 0.26,
  pastFallLine: 0.3,
  baseBevel: 0.01,
  outerShare: 0.7,
  leg: 0.9,
};

export const examples = {
  // A leg longer than the turn is wide stands the mass beyond its centre: there the speed has no end.
  explainChain: () => [...explainChain(question), ...explainChain({ ...question, leg: 12 })],
  speedCeilingWorking: () => speedCeilingWorking(13),
  idealRadiusWorking: () => {
    const working = idealRadiusWorking(8, 13, 0.26, 0.8, 1);
    return working === null ? [] : [working];
  },
  terminalSpeedWorking: () =>
    terminalSpeedWorking({ mass: 80, slope: 0.35, friction: 0.05, airDensity: 1, dragArea: 0.4 }),
};
