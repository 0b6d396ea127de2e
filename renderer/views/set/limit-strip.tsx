import type { JSX } from 'preact';
import { HELD_BACK_WORDS, type HeldBackBy } from '../../../core/line/index.ts';
import { type QuickestPair, setRunOf } from '../../answers/index.ts';
import { PairBadge } from '../../kit/index.ts';
import { chosenPairs, t } from '../../state/index.ts';
import type { PlanScale } from './plan-scale.ts';

const ROW = 19;
/** px that the longest words take in the largest lettering. */
const WORD_ROOM = 112;

export const stripHeight = (): number =>
  chosenPairs.value.length > 0 ? chosenPairs.value.length * ROW + 4 : 0;

/** What holds the skier back at each gate, in a word; counted where gates stand too close for words. */
export function LimitStrip({ scale, top }: { scale: PlanScale; top: number }): JSX.Element {
  return (
    <g class="limit-strip">
      {chosenPairs.value.map((pair, row) => {
        const run = setRunOf(pair.id);
        const gates = run?.gates.slice(scale.from, scale.to + 1) ?? [];
        return (
          <g key={pair.id} transform={`translate(0,${top + row * ROW + 8})`}>
            <PairBadge mark={pair.mark} svg />
            {scale.perGate < WORD_ROOM ? (
              <text x={46} dominant-baseline="central">
                {countsText(gates)}
              </text>
            ) : (
              gates.map(({ heldBackBy }, i) => (
                <text
                  key={scale.from + i}
                  x={scale.down(gateDown(run!, scale.from + i))}
                  text-anchor="middle"
                  dominant-baseline="central"
                >
                  {t(HELD_BACK_WORDS[heldBackBy])}
                </text>
              ))
            )}
          </g>
        );
      })}
    </g>
  );
}

/** Where a gate's word stands, m down the hill: where the run passes its pole. */
function gateDown({ run, gates }: QuickestPair, at: number): number {
  const k = run.t.findIndex(time => time >= gates[at]!.seconds - 1e-9);
  return run.y[Math.max(0, k)]!;
}

/** "strength at 31 gates, grip at 20". */
function countsText(gates: readonly { readonly heldBackBy: HeldBackBy }[]): string {
  const counts = new Map<HeldBackBy, number>();
  for (const { heldBackBy } of gates) counts.set(heldBackBy, (counts.get(heldBackBy) ?? 0) + 1);
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .map(([by, count]) => t('set.heldBackAt', { by: t(HELD_BACK_WORDS[by]), count }))
    .join(', ');
}
