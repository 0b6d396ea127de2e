/**
 * One instant of a run in plain sentences with numbers, from its dynamic balance. They explain the model's balance; they are no advice on how
 * fast or where to ski.
 */

import { GRAVITY } from '../skier/index.ts';
import { DEGREE, KMH } from '../units/index.ts';
import type { CoachWords } from './coach-words.ts';
import type { DynamicMoment } from './dynamic-moment.ts';
import { SLIPPING_FROM } from './track.ts';

const STRAIGHT = 1e-4;

/** @param mass skier with equipment, kg */
export function momentWords(m: DynamicMoment, mass: number): CoachWords {
  return { verdict: verdict(m), stance: stance(m, mass), changes: changes(m) };
}

function verdict(m: DynamicMoment): string {
  const at = `At ${degrees(Math.abs(m.edge))} of edge and ${kmh(m.speed)} the ski's own arc is ${radius(m.ownCurvature)}`;
  if (m.slip > SLIPPING_FROM) {
    return `${at}, and the edge lets go: the path taken is ${radius(m.curvature)}, and the edge slips ${degrees(m.slip)} on average.`;
  }
  return m.hold < DEGREE / 2
    ? `${at} and it carves it. The force leans as far as the edge carries: no grip to spare.`
    : `${at} and it carves it. The force leans ${degrees(Math.abs(m.lean))}, with ${degrees(m.hold)} of grip to spare.`;
}

function stance(m: DynamicMoment, mass: number): string {
  const load = `The skis press with ${m.load.toFixed(0)} N, ${(m.load / (mass * GRAVITY)).toFixed(2)} times body weight, on a leg of ${m.leg.toFixed(2)} m.`;
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
  return [...words, ...remedies(m, side)];
}

/**
 * What the shelf under this edge carries, with the mass swinging and the leg working as they do: from
 * N sinψ − A cosψ = ℓψ̈ + 2ℓ̇ψ̇ at the greatest lean it holds.
 */
function remedies(m: DynamicMoment, side: 1 | -1): string[] {
  const greatestLean = side * m.lean + m.hold;
  const swing = side * (m.leg * m.leanAcceleration + 2 * m.legSpeed * m.leanRate);
  const carried = (m.intoSnow * Math.sin(greatestLean) - swing) / Math.cos(greatestLean);
  const downhill = side * GRAVITY * Math.sin(m.slope) * Math.sin(m.heading);
  const own = side * m.ownCurvature;
  const room = carried - downhill;
  const pace = m.speed * m.skiSpeed;
  if (!(own > STRAIGHT)) return [];
  if (room <= 0) {
    return [
      'The pull of the slope alone is more than this edge carries here: finish the turn sooner, or keep more edge.',
    ];
  }
  const fastest = m.speed * Math.sqrt(room / (own * pace));
  const least = pace / room;
  if (m.slip > SLIPPING_FROM) {
    return [
      `Less speed: on its own arc this edge grips here below ${kmh(fastest)} (${kmh(m.speed - fastest)} slower).`,
      `A ski that turns wider: at this speed the edge carries ${least.toFixed(1)} m here; the ski's own arc is ${radius(m.ownCurvature)}.`,
    ];
  }
  return [
    `On this arc grip ends here at ${kmh(fastest)}; at this speed, at a radius of ${least.toFixed(1)} m.`,
  ];
}

function kmh(speed: number): string {
  return `${(speed / KMH).toFixed(0)} km/h`;
}

function radius(curvature: number): string {
  return Math.abs(curvature) > STRAIGHT ? `${Math.abs(1 / curvature).toFixed(1)} m` : 'straight';
}

function degrees(angle: number): string {
  return `${(angle / DEGREE).toFixed(1)}°`;
}
