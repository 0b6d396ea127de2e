import {
  buildRadiusTable,
  cosineTurnSurface,
  type TurnSurface,
  tableTurnSurface,
} from '../../core/carve/index.ts';
import type { GrooveCase } from '../../core/line/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { cosineTurn, tableTurn } from '../../core/run/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { asking } from './fault.ts';
import { carvingSkiOf } from './groove-point.ts';
import type { KnownTurn, Why } from './turn-of.ts';
import { t } from './words.ts';

export interface KnownSurface extends KnownTurn {
  readonly surface: TurnSurface;
  /** The ski in its groove, where that is what the surface is of. */
  readonly groove: GrooveCase | null;
}

/**
 * The curvature of a ski's own track as a smooth surface over edge angle and load.
 *
 * @throws InputFault when the file states a stiffness that cannot be used
 */
export function surfaceOf(file: string, ski: Ski, hardness: number, turn: 'groove' | 'cosine'): KnownSurface {
  const press = { contactLength: ski.contactLength, hardness };
  const rigid = (why: Why): KnownSurface => ({
    turn: cosineTurn(sidecut(ski).radius, press),
    surface: cosineTurnSurface(sidecut(ski).radius, press),
    source: 'cosine rule',
    groove: null,
    words: t('calc.turn.cosine', { name: ski.name, why: t(`calc.turn.${why}`) }),
  });
  if (turn === 'cosine') return rigid('asAsked');
  if (ski.bending === null) return rigid('noStiffness');
  const carving = carvingSkiOf(file, ski);
  const table = asking(file, () => buildRadiusTable(carving, hardness, {}));
  if (table === null || 'ok' in table) return rigid('notSolved');
  return {
    turn: tableTurn(table),
    surface: tableTurnSurface(table),
    source: 'groove',
    groove: { ski: carving, hardness },
    words: t('calc.turn.groove', { name: ski.name }),
  };
}
