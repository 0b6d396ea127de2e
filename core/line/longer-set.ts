import type { ChainAnswer, ChainGuess, ChainMultipliers } from '../numeric/index.ts';
import { CONTROLS, EDGE_RATE, MISMATCH_RATE_CONTROL, STATES } from './line-model.ts';
import { MIRRORED } from './set-guess.ts';

const MIRRORED_CONTROLS: readonly number[] = [EDGE_RATE, MISMATCH_RATE_CONTROL];
/** Where each limit goes in the mirror: the two angulations change places. */
const MIRRORED_LIMITS = [0, 2, 1, 3, 4];

/**
 * A guess for a long set from the answer for its first gates: the head's own pieces, then its last steady ones again
 * and again, mirrored where the set turns the other way, and its end. Multipliers go along.
 *
 * @param turns of the long set's poles; the head has the first `headPoles` of them
 */
export function longerSet(
  head: ChainAnswer,
  headPoles: number,
  turns: readonly (1 | -1)[],
  perPiece: number,
): ChainGuess {
  const pieces = turns.length + 1;
  const stages = pieces * perPiece;
  const headPieces = headPoles + 1;
  /** Piece of the head that stands for each piece, and whether mirrored. */
  const source = Array.from({ length: pieces }, (_, piece) => {
    const fromEnd = pieces - piece;
    const of = piece < headPieces - 3 ? piece : fromEnd <= 2 ? headPieces - fromEnd : headPieces - 4;
    // A piece is told by the pole it begins at; the first begins at none.
    const mirrored = piece > 0 && turns[piece - 1] !== turns[of - 1];
    return { of, mirrored };
  });
  const flip = (index: number, sided: readonly number[], mirrored: boolean) =>
    mirrored && sided.includes(index) ? -1 : 1;
  const byNode = (
    from: Float64Array,
    width: number,
    sided: readonly number[],
    place = (i: number, _: boolean) => i,
  ) =>
    spread(
      (stages + 1) * width,
      (k, i) => {
        const piece = Math.min(pieces - 1, Math.floor(k / perPiece));
        const { of, mirrored } = source[piece];
        const node = of * perPiece + (k - piece * perPiece);
        return flip(i, sided, mirrored) * from[node * width + place(i, mirrored)];
      },
      width,
    );
  const byStage = (from: Float64Array, width: number, sided: readonly number[]) =>
    spread(
      stages * width,
      (k, i) => {
        const { of, mirrored } = source[Math.floor(k / perPiece)];
        return flip(i, sided, mirrored) * from[(of * perPiece + (k % perPiece)) * width + i];
      },
      width,
    );
  const n = STATES.length;
  const m = CONTROLS.length;
  const { multipliers } = head;
  const g = multipliers.limits.length / (head.x.length / n);
  // In the mirror the lower bound of a sided quantity is the other's upper one.
  const bound = (
    own: Float64Array,
    other: Float64Array,
    width: number,
    sided: readonly number[],
    node: boolean,
  ) => {
    const [a, b] = node
      ? [byNode(own, width, []), byNode(other, width, [])]
      : [byStage(own, width, []), byStage(other, width, [])];
    return a.map((v, at) => {
      const piece = Math.min(pieces - 1, Math.floor(at / width / perPiece));
      return source[piece].mirrored && sided.includes(at % width) ? b[at] : v;
    });
  };
  const limitAt = (i: number, mirrored: boolean) => (mirrored ? MIRRORED_LIMITS[i] : i);
  const { stateLow, stateHigh, controlLow, controlHigh } = multipliers;
  const reported: ChainMultipliers = {
    costate: byStage(multipliers.costate, n, MIRRORED),
    ends: multipliers.ends,
    stateLow: bound(stateLow, stateHigh, n, MIRRORED, true),
    stateHigh: bound(stateHigh, stateLow, n, MIRRORED, true),
    controlLow: bound(controlLow, controlHigh, m, MIRRORED_CONTROLS, false),
    controlHigh: bound(controlHigh, controlLow, m, MIRRORED_CONTROLS, false),
    limits: byNode(multipliers.limits, g, [], limitAt),
    slack: byNode(multipliers.slack, g, [], limitAt),
  };
  return { x: byNode(head.x, n, MIRRORED), u: byStage(head.u, m, MIRRORED_CONTROLS), multipliers: reported };
}

function spread(length: number, value: (row: number, column: number) => number, width: number): Float64Array {
  return Float64Array.from({ length }, (_, at) => value(Math.floor(at / width), at % width));
}
