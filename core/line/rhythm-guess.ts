import { GRAVITY } from '../skier/index.ts';
import { CONTROLS, DRIFT, EDGE, LEAN, LEAN_RATE, LEG, PUSH, SPEED, STATES } from './line-model.ts';
import type { RhythmQuestion } from './rhythm.ts';

/** Where a search begins: how fast, and how far the skier leans against what the swing asks. */
export interface GuessTone {
  readonly pace: number;
  readonly lean: number;
}

/** Sideways acceleration a rhythm is skied at, m/s²: a lean of some 55°. */
const SIDEWAYS = 14;
const LEAST_SWING = 0.35;
const FASTEST = 25;
const STEEPEST_LEAN = 1.05;
const STEEPEST_EDGE = 1.13;
/** Edge angle beyond the lean, rad. */
const BEYOND = 0.09;

/**
 * A first guess for half a period between two gates: the skis on the line, the mass swinging less than they do by
 * 1/(1 + ω²ℓ/g) as small swings of a leaning leg have it.
 */
export function rhythmGuess(
  { conditions, spacing, offset }: RhythmQuestion,
  stages: number,
  tone: GuessTone,
): { x: Float64Array; u: Float64Array } {
  const { skier, slope } = conditions;
  const across = offset / 2 + conditions.clearance;
  const leg = 0.9 * skier.legLongest;
  const cosSlope = Math.sqrt(1 - slope.sine(0) ** 2);
  const swing = Math.max(LEAST_SWING, across - (SIDEWAYS * leg) / GRAVITY);
  const pace = tone.pace * Math.min(FASTEST, (Math.sqrt(SIDEWAYS / swing) * spacing) / Math.PI);
  const omega = (Math.PI * pace) / spacing;
  const sideways = (across * omega * omega) / (1 + (omega * omega * leg) / GRAVITY);
  const lean = Math.min(STEEPEST_LEAN, tone.lean * Math.atan(sideways / (GRAVITY * cosSlope)));
  const edge = Math.min(STEEPEST_EDGE, 0.95 * skier.edgeMost, lean + BEYOND);
  const n = STATES.length;
  const x = new Float64Array((stages + 1) * n);
  for (let k = 0; k <= stages; k++) {
    const phase = (Math.PI * k) / stages;
    const at = k * n;
    x[at + SPEED] = pace;
    x[at + LEAN] = -lean * Math.cos(phase);
    x[at + LEAN_RATE] = lean * omega * Math.sin(phase);
    x[at + LEG] = leg;
    x[at + EDGE] = -edge * Math.cos(phase);
    x[at + DRIFT] = 0.01;
    x[at + PUSH] = Math.min(0.9 * skier.pushMost, cosSlope / Math.cos(lean * Math.cos(phase)));
  }
  return { x, u: new Float64Array(stages * CONTROLS.length) };
}
