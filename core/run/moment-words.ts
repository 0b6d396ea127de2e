/**
 * One instant of a run in plain sentences with numbers. They explain the model's balance; they are no advice on how
 * fast or where to ski.
 */

import { GRAVITY } from '../skier/index.ts';
import type { CoachWords } from './coach-words.ts';
import type { DynamicMoment } from './dynamic-moment.ts';
import { SLIPPING_FROM } from './track.ts';

const DEGREE = Math.PI / 180;
const STRAIGHT = 1e-4;

/** @param mass skier with equipment, kg */
export function momentWords(m: DynamicMoment, mass: number): CoachWords {
  return { verdict: verdict(m), stance: stance(m, mass), changes: changes(m) };
}

function verdict(m: DynamicMoment): string {
  const at = `At ${degrees(Math.abs(m.edge))} of edge and ${(3.6 * m.speed).toFixed(0)} km/h the ski's own arc is ${radius(m.ownCurvature)}`;
  if (m.slip > SLIPPING_FROM) {
    return `${at}, and the shelf cannot hold a mass on it: the path taken is ${radius(m.curvature)}, and the edge slips ${degrees(m.slip)} on average.`;
  }
  return m.hold < DEGREE / 2
    ? `${at} and the path follows it. The force leans as far as the shelf carries, with nothing to spare.`
    : `${at} and the path follows it. The force leans ${degrees(Math.abs(m.lean))} and the edge holds with ${degrees(m.hold)} to spare.`;
}

function stance(m: DynamicMoment, mass: number): string {
  const load = `The skis press with ${m.load.toFixed(0)} N, ${(m.load / (mass * GRAVITY)).toFixed(2)} times the weight, on a leg of ${m.leg.toFixed(2)} m.`;
  if (Math.abs(m.angulation) < DEGREE / 2) return `Body and skis lean alike: no angulation. ${load}`;
  return m.angulation > 0
    ? `The skis are tilted ${degrees(m.angulation)} beyond the body: that is the angulation. ${load}`
    : `The body leans ${degrees(-m.angulation)} further than the skis. ${load}`;
}

function changes(m: DynamicMoment): string[] {
  const side = m.edge < 0 ? -1 : 1;
  const standing = side * Math.atan2(m.sideways, m.intoSnow);
  const swing = side * m.lean - standing;
  const words: string[] = [];
  if (Math.abs(swing) > 2 * DEGREE) {
    words.push(
      `Held for long, this path would lean the skier ${degrees(standing)}; the swing of the mass makes it ${degrees(Math.abs(swing))} ${swing < 0 ? 'less' : 'more'}.`,
    );
  }
  if (m.slip > SLIPPING_FROM) {
    const asked = side * m.ownCurvature * m.speed * m.skiSpeed;
    const gone = side * (m.ownCurvature - m.curvature) * m.speed * m.skiSpeed;
    if (asked > 0 && gone > 0) {
      words.push(
        `The own arc asks for ${(asked / GRAVITY).toFixed(2)} g sideways, ${(gone / GRAVITY).toFixed(2)} g more than the path takes: less speed, a larger radius or a quicker change from turn to turn brings them together.`,
      );
    }
  }
  return words;
}

function radius(curvature: number): string {
  return Math.abs(curvature) > STRAIGHT ? `${Math.abs(1 / curvature).toFixed(1)} m` : 'straight';
}

function degrees(angle: number): string {
  return `${(angle / DEGREE).toFixed(1)}°`;
}
