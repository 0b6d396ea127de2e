import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  biteAngleWorking,
  cornerAngleWorking,
  cosineRadiusWorking,
  holdWorking,
  lineLoadWorking,
  travelWorking,
  wedgeDepthWorking,
} from '../../../core/carve/index.ts';
import { hardness, radians } from './demo.ts';

const ski = {
  sidecutRadius: 13,
  sidecutDepth: 0.0188,
  camber: 0.006,
  baseBevel: radians(0.5),
  sideAngle: radians(87),
};

describe('carve workings', () => {
  const workings = [
    cosineRadiusWorking(ski, radians(52)),
    travelWorking(ski, radians(52)),
    biteAngleWorking(ski, radians(52)),
    cornerAngleWorking(ski),
    lineLoadWorking(0.0018, radians(52), hardness(1)),
    wedgeDepthWorking(1000, radians(52), hardness(1)),
    holdWorking(radians(52), radians(1.2), radians(0.5), radians(48)),
  ];
  it.each(workings.map(working => [working.key, working] as const))(
    '%s: formula gives result',
    (_, working) => {
      const scope = Object.fromEntries(working.inputs.map(input => [input.name, input.value]));
      const value = evaluate(working.formula, scope) as number;
      expect(value).toBeCloseTo(working.result.value, 10);
      expect(working.result.value).not.toBe(0);
    },
  );

  it('uses each key once', () => {
    const keys = workings.map(working => working.key);
    expect(new Set(keys).size).toBe(keys.length);
  });
});
