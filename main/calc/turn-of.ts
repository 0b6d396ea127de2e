import { buildRadiusTable } from '../../core/carve/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { type CarvedTurn, cosineTurn, tableTurn } from '../../core/run/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { asking } from './fault.ts';
import { carvingSkiOf } from './groove-point.ts';
import { t } from './words.ts';

/** What the radius of a turn is taken from: the solved groove, or rigid snow for want of a stiffness. */
export type TurnSource = 'groove' | 'cosine rule';

/** Why a turn follows the cosine rule. */
export type Why = 'noStiffness' | 'notSolved' | 'asAsked';

export interface KnownTurn {
  readonly turn: CarvedTurn;
  readonly source: TurnSource;
  /** The same in words. */
  readonly words: string;
}

/**
 * The turn a run or a set asks of a ski on snow of a hardness in N/m³.
 *
 * @throws InputFault when the file states a stiffness that cannot be used
 */
export function turnOf(file: string, ski: Ski, hardness: number): KnownTurn {
  const rigid = (why: Why): KnownTurn => ({
    turn: cosineTurn(sidecut(ski).radius, { contactLength: ski.contactLength, hardness }),
    source: 'cosine rule',
    words: t('calc.turn.cosine', { name: ski.name, why: t(`calc.turn.${why}`) }),
  });
  if (ski.bending === null) return rigid('noStiffness');
  const table = asking(file, () => buildRadiusTable(carvingSkiOf(file, ski), hardness, {}));
  if (table === null || 'ok' in table) return rigid('notSolved');
  const words = t('calc.turn.groove', { name: ski.name });
  return { turn: tableTurn(table), source: 'groove', words };
}
