import { inSi } from '../../core/conditions/index.ts';
import { explainChain, holdingSpeed, turnMoment } from '../../core/run/index.ts';
import { standingLeg } from '../../core/skier/index.ts';
import type { Working } from '../../core/working/index.ts';
import { conditions } from '../state/index.ts';

export interface Balance {
  /** ψ, rad from the slope's normal. */
  readonly lean: number;
  /** What the snow gives a skier in balance at that lean, N. */
  readonly load: number;
  /** Greatest speed at which the shelf under the boot carries this turn, m/s. */
  readonly greatestSpeed: number;
  /** How the lean, or the greatest speed, comes about: links of the chain. */
  explain(...keys: string[]): Working[];
}

const ASKED = ['speedKmh', 'massKg', 'slopeDeg', 'heightM'] as const;

/** Balance in a turn of radius R (m) at the present speed on an edge angle (rad), as the skier crosses the fall line. */
export function balanceIn(radius: number, edgeAngle: number, baseBevel: number): Balance {
  const { startSpeed, mass, slope, height } = inSi(conditions.value, ASKED);
  const question = {
    turn: { radius: () => radius },
    edgeAngle,
    speed: startSpeed,
    mass,
    slope,
    pastFallLine: 0,
    baseBevel,
    outerShare: 1,
    leg: standingLeg(height),
  };
  const { lean, load } = turnMoment(question);
  return {
    lean,
    load,
    greatestSpeed: holdingSpeed(question),
    explain: (...keys) =>
      explainChain({ ...question, sidecutRadius: radius }).filter(({ key }) => keys.includes(key)),
  };
}
