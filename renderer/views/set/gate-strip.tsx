import type { JSX } from 'preact';
import type { GateMode } from '../../../core/course/index.ts';
import { chosenRanking } from '../../answers/index.ts';
import { PairBadge } from '../../kit/index.ts';
import { chosenPairs } from '../../state/index.ts';
import { MODE_WORDS } from './gate-words.ts';
import type { PlanScale } from './plan-scale.ts';

const ROW = 19;
const KEY = 20;
/** px a shape takes with some air. */
const GLYPH_ROOM = 17;
/** px along the key, wide enough for the largest lettering. */
const KEY_AT = [0, 104, 336];

export const stripHeight = (): number =>
  chosenPairs.value.length > 0 ? chosenPairs.value.length * ROW + KEY : 0;

/** How each pair gets round each gate, by shape: an arc, a tighter arc, a wave. */
export function GateStrip({ scale, top }: { scale: PlanScale; top: number }): JSX.Element | null {
  const answer = chosenRanking.value.value;
  const pairs = chosenPairs.value;
  if (!answer || pairs.length === 0) return null;
  const narrow = Math.min(1, scale.perGate / GLYPH_ROOM);
  // Narrower than this a shape is not told from another, so the gates are counted.
  const crowded = narrow < 0.4;
  return (
    <g class="gate-strip">
      {pairs.map((pair, row) => {
        const ranked = answer.ranking.pairs.find(each => answer.pairs[each.index].id === pair.id);
        return (
          <g key={pair.id} transform={`translate(0,${top + row * ROW + 6})`}>
            <PairBadge mark={pair.mark} svg />
            {ranked && crowded && (
              <text x={46} dominant-baseline="central">
                {countsText(ranked.report.gates.slice(scale.from, scale.to + 1).map(gate => gate.mode))}
              </text>
            )}
            {!crowded &&
              ranked?.report.gates.slice(scale.from, scale.to + 1).map((gate, i) => (
                <g
                  key={`${gate.gate} ${i}`}
                  transform={`translate(${scale.down(answer.gates[scale.from + i].y)},0) scale(${narrow},1)`}
                  stroke={pair.mark.colour}
                >
                  <Glyph mode={gate.mode} />
                </g>
              ))}
          </g>
        );
      })}
      <g class="strip-key" transform={`translate(46,${top + pairs.length * ROW + 8})`}>
        {MODES.map((mode, i) => (
          <g key={mode} transform={`translate(${KEY_AT[i]},0)`} stroke="var(--ink-soft)">
            <Glyph mode={mode} />
            <text x={14} dominant-baseline="central" stroke="none">
              {MODE_WORDS[mode]}
              {mode === 'tight arcs' && ' and traverse'}
            </text>
          </g>
        ))}
      </g>
    </g>
  );
}

const MODES = ['carves', 'tight arcs', 'drifts'] as const;

/** "carves 398, tighter arc 2". */
function countsText(modes: readonly GateMode[]): string {
  return MODES.map(mode => [mode, modes.filter(each => each === mode).length] as const)
    .filter(([, count]) => count > 0)
    .map(([mode, count]) => `${MODE_WORDS[mode]} ${count}`)
    .join(', ');
}

const GLYPHS: Record<GateMode, string> = {
  carves: 'M-7,3Q0,-7 7,3',
  'tight arcs': 'M-8,4L-4,4Q0,-9 4,4L8,4',
  drifts: 'M-7,-2q1.75,-3 3.5,0t3.5,0t3.5,0t3.5,0M-7,3q1.75,-3 3.5,0t3.5,0t3.5,0t3.5,0',
};

const Glyph = ({ mode }: { mode: GateMode }): JSX.Element => <path class="gate-mode" d={GLYPHS[mode]} />;
