import { buildRadiusTable } from '../../core/carve/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { type CarvedTurn, cosineTurn, tableTurn } from '../../core/run/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { asking } from './fault.ts';
import { carvingSkiOf } from './groove-point.ts';

/** What the radius of a turn is taken from: the solved groove, or rigid snow for want of a stiffness. */
export type TurnSource = 'groove' | 'cosine rule';

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
  const rigid = (why: string): KnownTurn => ({
    turn: cosineTurn(sidecut(ski).radius, { contactLength: ski.contactLength, hardness }),
    source: 'cosine rule',
    words: `${ski.name}: turn radii follow the cosine rule of rigid snow, ${why}.`,
  });
  if (ski.bending === null) return rigid('because the pair states no bending stiffness');
  const table = asking(file, () => buildRadiusTable(carvingSkiOf(file, ski), hardness, {}));
  if (table === null || 'ok' in table) return rigid('because the groove could not be solved everywhere');
  const words = `${ski.name}: turn radii are those of the ski solved in its own groove.`;
  return { turn: tableTurn(table), source: 'groove', words };
}

export const NO_ADVICE = 'No advice on how fast or where to ski.';

/** What `--help` says of `--wall` beside its range. */
export const WALL_NOTE =
  '--wall: 600 kPa on groomed snow unless given, by the cube root of the hardness elsewhere.';
