/**
 * What to change, in plain sentences with numbers. They explain the model's balance; they are no advice on how
 * fast or where to ski.
 */

import { DEGREE, KMH } from '../units/index.ts';
import { GRAVITY } from './balance.ts';
import {
  holdingEdge,
  holdingRadius,
  holdingSpeed,
  type TurnMoment,
  type TurnQuestion,
  turnMoment,
} from './turn-moment.ts';

export interface CoachWords {
  /** Does it hold, and by how much. */
  readonly verdict: string;
  /** What the body does. */
  readonly stance: string;
  /** What would change the answer: speed, edge angle, another ski. */
  readonly changes: readonly string[];
}

/** Puts the chain's answer into words. */
export function coachWords(question: TurnQuestion): CoachWords {
  const moment = turnMoment(question);
  return {
    verdict: verdict(question, moment),
    stance: stance(question, moment),
    changes: moment.hold < 0 ? remedies(question, moment) : limits(question, moment),
  };
}

function verdict(question: TurnQuestion, moment: TurnMoment): string {
  const turn = `At ${degrees(question.edgeAngle)} of edge and ${kmh(question.speed)} the ski asks for a ${metres(moment.radius)} turn`;
  return moment.hold < 0
    ? `${turn}. The force leans ${degrees(moment.lean)}, ${degrees(-moment.hold)} more than the edge can carry: the edge lets go and the ski slides.`
    : `${turn}. The force leans ${degrees(moment.lean)} with ${degrees(moment.hold)} of grip to spare: it carves.`;
}

function stance(question: TurnQuestion, moment: TurnMoment): string {
  const load = `The skis press with ${moment.load.toFixed(0)} N, ${(moment.load / (question.mass * GRAVITY)).toFixed(2)} times body weight.`;
  const angle = moment.angulation;
  if (Math.abs(angle) < 0.5 * DEGREE) return `Body and skis lean alike: no angulation. ${load}`;
  return angle > 0
    ? `Tilt the skis ${degrees(angle)} beyond the body: that is the angulation. ${load}`
    : `The body would have to lean ${degrees(-angle)} further than the skis: that is falling inside. ${load}`;
}

function remedies(question: TurnQuestion, moment: TurnMoment): string[] {
  const words: string[] = [];
  const speed = holdingSpeed(question);
  words.push(
    speed > 0
      ? `Less speed: below ${kmh(speed)} this edge angle grips (${kmh(question.speed - speed)} slower).`
      : 'Less speed alone does not help here: the pull of the slope is already more than this edge carries.',
  );
  const edge = holdingEdge(question);
  words.push(
    edge === null
      ? 'More edge does not help: every further degree tightens the turn as fast as it adds grip.'
      : edge > question.edgeAngle
        ? `More edge: from ${degrees(edge)} it grips at this speed (${degrees(edge - question.edgeAngle)} more).`
        : `A flatter ski asks for a wider turn: ${degrees(edge)} of edge grips at this speed.`,
  );
  const radius = holdingRadius(question);
  if (Number.isFinite(radius) && radius > 0) {
    words.push(
      `Another ski: one that turns ${metres(radius)} here instead of ${metres(moment.radius)} grips (${times(radius / moment.radius)} the radius).`,
    );
  }
  return words;
}

function limits(question: TurnQuestion, moment: TurnMoment): string[] {
  const words = [`At this edge angle grip ends at ${kmh(holdingSpeed(question))}.`];
  const edge = holdingEdge(question);
  if (edge !== null && edge < question.edgeAngle) {
    words.push(`At this speed ${degrees(edge)} of edge is the least that grips.`);
  }
  const radius = holdingRadius(question);
  if (radius > 0 && radius < moment.radius) {
    words.push(`A ski that turns as tightly as ${metres(radius)} here would still grip.`);
  }
  return words;
}

function degrees(angle: number): string {
  return `${(angle / DEGREE).toFixed(1)}°`;
}

function kmh(speed: number): string {
  return `${(speed / KMH).toFixed(0)} km/h`;
}

function metres(length: number): string {
  return `${length.toFixed(1)} m`;
}

function times(ratio: number): string {
  return `${ratio.toFixed(2)} times`;
}
