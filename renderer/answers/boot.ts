import { type BootAnswer, type BootQuestion, bootAnswer } from '../../core/boot/index.ts';
import { pressureCentre } from '../../core/carve/index.ts';
import { inSi } from '../../core/conditions/index.ts';
import { type ChosenPair, conditions, ski } from '../state/index.ts';
import { type Balance, balanceIn } from './balance.ts';
import { grooveOf } from './grooves.ts';
import { carvingOf } from './radius-tables.ts';
import { request } from './request.ts';
import { turnOf } from './turn.ts';

export interface BootOfPair {
  readonly pair: ChosenPair;
  readonly question: BootQuestion;
  readonly answer: BootAnswer;
  readonly balance: Balance;
  /** Ahead of the boot centre, m; null where the groove is not solved. */
  readonly fore: number | null;
}

/** What the boot carries on this pair, in balance at the present speed; null while there is no turn to be in. */
export function bootOf(pair: ChosenPair): BootOfPair | null {
  const { radius } = turnOf(pair);
  if (radius === null) return null;
  const solved = grooveOf(pair);
  const carving = carvingOf(pair.pair);
  const { edgeAngle, load } = solved?.conditions ?? request.value;
  const { waistWidth, baseBevel, standingHeight, bootSoleHeight, heightsStated } = ski(pair.pair);
  const balance = balanceIn(radius, edgeAngle, baseBevel);
  const centre = solved && carving.ok ? pressureCentre(carving.ski, solved) : null;
  const question: BootQuestion = {
    normal: load,
    edgeAngle,
    lean: balance.lean,
    halfWaist: waistWidth / 2,
    standingHeight,
    bootSoleHeight,
    heightsStated,
    stiffness: inSi(conditions.value, ['bootStiffnessNmPerDeg']).bootStiffness,
    centre,
  };
  return { pair, question, answer: bootAnswer(question), balance, fore: centre?.fore ?? null };
}
