/**
 * One instant of a run as sentences with their numbers, from its dynamic balance. They explain the model's balance; they
 * are no advice on how fast or where to ski.
 */

import type { Quantity, Sentence } from '../language/index.ts';
import { GRAVITY } from '../skier/index.ts';
import { DEGREE } from '../units/index.ts';
import type { CoachWords } from './coach-words.ts';
import type { DynamicMoment } from './dynamic-moment.ts';
import { SLIPPING_FROM } from './track.ts';

const STRAIGHT = 1e-4;

/** @param mass skier with equipment, kg */
export function momentWords(m: DynamicMoment, mass: number): CoachWords {
  return { verdict: verdict(m), stance: stance(m, mass), changes: changes(m) };
}

function verdict(m: DynamicMoment): Sentence {
  const at = { edge: angle(Math.abs(m.edge)), speed: pace(m.speed), arc: radius(m.ownCurvature) };
  if (m.slip > SLIPPING_FROM) {
    return { key: 'run.edgeLetsGo', values: { ...at, path: radius(m.curvature), slip: angle(m.slip) } };
  }
  return m.hold < DEGREE / 2
    ? { key: 'run.carvesWithoutGrip', values: at }
    : { key: 'run.carvesWithGrip', values: { ...at, lean: angle(Math.abs(m.lean)), grip: angle(m.hold) } };
}

function stance(m: DynamicMoment, mass: number): Sentence[] {
  const press: Sentence = {
    key: 'run.pressOnLeg',
    values: {
      load: { quantity: 'force', value: m.load },
      weights: { quantity: 'number', value: m.load / (mass * GRAVITY) },
      leg: { quantity: 'bodyLength', value: m.leg },
    },
  };
  if (Math.abs(m.angulation) < DEGREE / 2) return [{ key: 'run.leansAlike' }, press];
  return m.angulation > 0
    ? [{ key: 'run.skisTilted', values: { angulation: angle(m.angulation) } }, press]
    : [{ key: 'run.bodyLeansFurther', values: { angulation: angle(-m.angulation) } }, press];
}

function changes(m: DynamicMoment): Sentence[] {
  const side = m.edge < 0 ? -1 : 1;
  const standing = side * Math.atan2(m.sideways, m.intoSnow);
  const swing = side * m.lean - standing;
  if (!(Math.abs(swing) > 2 * DEGREE)) return remedies(m, side);
  const values = {
    standing: angle(standing),
    swing: angle(Math.abs(swing)),
    way: swing < 0 ? 'less' : 'more',
  };
  return [{ key: 'run.swing', values }, ...remedies(m, side)];
}

/**
 * What the shelf under this edge carries, with the mass swinging and the leg working as they do: from
 * N sinψ − A cosψ = ℓψ̈ + 2ℓ̇ψ̇ at the greatest lean it holds.
 */
function remedies(m: DynamicMoment, side: 1 | -1): Sentence[] {
  const greatestLean = side * m.lean + m.hold;
  const swing = side * (m.leg * m.leanAcceleration + 2 * m.legSpeed * m.leanRate);
  const carried = (m.intoSnow * Math.sin(greatestLean) - swing) / Math.cos(greatestLean);
  const downhill = side * GRAVITY * Math.sin(m.slope) * Math.sin(m.heading);
  const own = side * m.ownCurvature;
  const room = carried - downhill;
  const along = m.speed * m.skiSpeed;
  if (!(own > STRAIGHT)) return [];
  if (room <= 0) return [{ key: 'run.slopePullsMore' }];
  const fastest = m.speed * Math.sqrt(room / (own * along));
  const least: Quantity = { quantity: 'radius', value: along / room };
  if (m.slip > SLIPPING_FROM) {
    return [
      { key: 'run.lessSpeedOnArc', values: { speed: pace(fastest), slower: pace(m.speed - fastest) } },
      { key: 'run.widerSki', values: { radius: least, arc: radius(m.ownCurvature) } },
    ];
  }
  return [{ key: 'run.gripEndsOnArc', values: { speed: pace(fastest), radius: least } }];
}

function radius(curvature: number): Quantity | Sentence {
  return Math.abs(curvature) > STRAIGHT
    ? { quantity: 'radius', value: Math.abs(1 / curvature) }
    : { key: 'run.straight' };
}

const angle = (value: number) => ({ quantity: 'angle', value }) as const;
const pace = (value: number) => ({ quantity: 'speed', value, decimals: 0 }) as const;
