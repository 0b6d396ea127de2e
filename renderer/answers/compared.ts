import { cosineRadius, tableRadius } from '../../core/carve/index.ts';
import { inSi } from '../../core/conditions/index.ts';
import { FieldError } from '../../core/fault/index.ts';
import { type Springs, springs } from '../../core/flex/index.ts';
import {
  type ChosenTurn,
  cosineTurn,
  fastestHeld,
  neededEdge,
  type TurnRadius,
  tableTurn,
} from '../../core/run/index.ts';
import { TAPE_AND_CALIPER } from '../../core/shape/index.ts';
import { DEGREE } from '../../core/units/index.ts';
import { type ChosenPair, conditions, perPair, ski } from '../state/index.ts';
import { beamOf } from './beam.ts';
import type { Compared, Known } from './differences.ts';
import { limitedText } from './found-text.ts';
import { type TableState, tableOf } from './radius-tables.ts';
import { request } from './request.ts';
import { checkOf } from './rule-check.ts';
import { radiusOf, sidecutOf } from './sidecut.ts';

/**
 * Standard uncertainties where a pair file gives none, as usual in a ski room [common practice]: a stiffness
 * from bench readings, a kitchen scale, a bevel gauge.
 */
export const TAKEN_AS = { stiffness: 0.03, massKg: 0.02, angleDeg: 0.1 } as const;

export interface Turning {
  readonly radius: TurnRadius | null;
  readonly solved: boolean;
  readonly state: TableState;
}

const solvedTurns = new WeakMap<object, TurnRadius>();

/** How a pair turns: by its solved table when it is there, else by the cosine rule. */
export function turningOf({ pair }: Pick<ChosenPair, 'pair'>): Turning {
  const { hardness, fore } = request.value;
  const state = tableOf(pair, hardness, fore).value;
  const sidecut = radiusOf(pair);
  if (state.table) {
    let turn = solvedTurns.get(state.table);
    if (!turn) {
      turn = tableTurn(state.table);
      solvedTurns.set(state.table, turn);
    }
    return { radius: turn, solved: true, state };
  }
  return { radius: sidecut === null ? null : cosineTurn(sidecut), solved: false, state };
}

/** The three springs; null where the file gives no usable stiffness or the sole does not fit. */
export const springsOf = perPair((pair): Springs | null => {
  const { bending } = beamOf(pair);
  if (!bending) return null;
  try {
    const each = ski(pair);
    return springs(bending, { ...each, length: each.contactLength });
  } catch (fault) {
    if (fault instanceof FieldError) return null;
    throw fault;
  }
});

export function chosenTurn(radius: number): ChosenTurn {
  return { radius, ...inSi(conditions.value, ['massKg', 'slopeDeg', 'outerShare']) };
}

/** A pair as the differences are told of it, with the uncertainty of each value. */
export function comparedOf(pair: ChosenPair, turnRadius: number): Compared {
  const { uWidth, uLength } = TAPE_AND_CALIPER;
  const { sideAngle, baseBevel, mass, length, waistWidth } = pair.ski;
  const cut = sidecutOf(pair.pair);
  const sidecut = radiusOf(pair.pair);
  const relative = sidecut === null ? 0 : cut.radiusUncertainty / sidecut;
  const spring = springsOf(pair.pair);
  const known = (value: number, plusMinus: number): Known => ({ value, plusMinus });
  const stiff = (value: number | undefined) =>
    value === undefined ? null : known(value, TAKEN_AS.stiffness * value);
  const turning = turningOf(pair);
  const { edgeAngle, load } = request.value;
  const carved = turning.state.table
    ? tableRadius(turning.state.table, edgeAngle, load)
    : sidecut === null
      ? null
      : cosineRadius(sidecut, edgeAngle);
  const turn = chosenTurn(turnRadius);
  const fastest = turning.radius && fastestHeld(turning.radius, turn, baseBevel);
  const check = checkOf(pair.pair);
  return {
    name: pair.name,
    length: known(length, uLength),
    waist: known(waistWidth, uWidth),
    sidecutRadius: sidecut === null ? null : known(sidecut, cut.radiusUncertainty),
    turnRadius: carved === null ? null : { ...known(carved, carved * relative), solved: turning.solved },
    centre: stiff(spring?.centre),
    shovel: stiff(spring?.shovel),
    rear: stiff(spring?.rear),
    mass: mass === null ? null : known(mass, TAKEN_AS.massKg),
    sideAngle: known(sideAngle, TAKEN_AS.angleDeg * DEGREE),
    baseBevel: known(baseBevel, TAKEN_AS.angleDeg * DEGREE),
    fastest: fastest === null ? null : known(fastest, fastest * relative),
    edgeAtFastest:
      turning.radius === null || fastest === null ? null : neededEdge(turning.radius, turn, fastest),
    verdict: check.verdict,
    doubts: check.items
      .filter(item => item.verdict === 'fails' || item.verdict === 'too close to call')
      .map(limitedText),
  };
}
