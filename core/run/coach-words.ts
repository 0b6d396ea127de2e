/**
 * What to change, as sentences with their numbers. They explain the model's balance; they are no advice on how fast or
 * where to ski.
 */

import type { Sentence } from '../language/index.ts';
import { DEGREE } from '../units/index.ts';
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
  readonly verdict: Sentence;
  /** What the body does, and how hard the skis press. */
  readonly stance: readonly Sentence[];
  /** What would change the answer: speed, edge angle, another ski. */
  readonly changes: readonly Sentence[];
}

/** The chain's answer as sentences. */
export function coachWords(question: TurnQuestion): CoachWords {
  const moment = turnMoment(question);
  return {
    verdict: verdict(question, moment),
    stance: stance(question, moment),
    changes: moment.hold < 0 ? remedies(question, moment) : limits(question, moment),
  };
}

function verdict({ edgeAngle, speed }: TurnQuestion, { radius, lean, hold }: TurnMoment): Sentence {
  const turn = { edge: angle(edgeAngle), speed: pace(speed), radius: metres(radius), lean: angle(lean) };
  return hold < 0
    ? { key: 'run.turnSlides', values: { ...turn, beyond: angle(-hold) } }
    : { key: 'run.turnCarves', values: { ...turn, grip: angle(hold) } };
}

function stance({ mass }: TurnQuestion, { load, angulation }: TurnMoment): Sentence[] {
  const press: Sentence = { key: 'run.press', values: { load: newtons(load), weights: weights(load, mass) } };
  if (Math.abs(angulation) < DEGREE / 2) return [{ key: 'run.leansAlike' }, press];
  return angulation > 0
    ? [{ key: 'run.tiltTheSkis', values: { angulation: angle(angulation) } }, press]
    : [{ key: 'run.fallingInside', values: { angulation: angle(-angulation) } }, press];
}

function remedies(question: TurnQuestion, moment: TurnMoment): Sentence[] {
  const speed = holdingSpeed(question);
  const edge = holdingEdge(question);
  const radius = holdingRadius(question);
  const sentences: Sentence[] = [
    speed > 0
      ? { key: 'run.lessSpeed', values: { speed: pace(speed), slower: pace(question.speed - speed) } }
      : { key: 'run.lessSpeedNoHelp' },
    edge === null
      ? { key: 'run.moreEdgeNoHelp' }
      : edge > question.edgeAngle
        ? { key: 'run.moreEdge', values: { edge: angle(edge), more: angle(edge - question.edgeAngle) } }
        : { key: 'run.flatterSki', values: { edge: angle(edge) } },
  ];
  if (Number.isFinite(radius) && radius > 0) {
    const ratio = { quantity: 'number', value: radius / moment.radius } as const;
    const values = { radius: metres(radius), now: metres(moment.radius), ratio };
    sentences.push({ key: 'run.anotherSki', values });
  }
  return sentences;
}

function limits(question: TurnQuestion, moment: TurnMoment): Sentence[] {
  const sentences: Sentence[] = [{ key: 'run.gripEnds', values: { speed: pace(holdingSpeed(question)) } }];
  const edge = holdingEdge(question);
  if (edge !== null && edge < question.edgeAngle) {
    sentences.push({ key: 'run.leastEdge', values: { edge: angle(edge) } });
  }
  const radius = holdingRadius(question);
  if (radius > 0 && radius < moment.radius) {
    sentences.push({ key: 'run.tighterSki', values: { radius: metres(radius) } });
  }
  return sentences;
}

const angle = (value: number) => ({ quantity: 'angle', value }) as const;
const pace = (value: number) => ({ quantity: 'speed', value, decimals: 0 }) as const;
const metres = (value: number) => ({ quantity: 'radius', value }) as const;
const newtons = (value: number) => ({ quantity: 'force', value }) as const;
const weights = (load: number, mass: number) =>
  ({ quantity: 'number', value: load / (mass * GRAVITY) }) as const;
