import type { JSX } from 'preact';
import { setRunOf } from '../../answers/index.ts';
import { PairBadge } from '../../kit/index.ts';
import { activePair, type ChosenPair, chosenPairs, t } from '../../state/index.ts';
import type { PlanScale } from './plan-scale.ts';

/** px from gate to gate that leave room for the lines at full weight. */
const ROOMY = 24;

interface DrawnPath {
  readonly pair: ChosenPair;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly of: 'skis' | 'mass';
}

/** The quickest run of each chosen pair: where its skis go, and the shorter way of the mass inside it. */
export function pathsOf(): DrawnPath[] {
  return chosenPairs.value.flatMap(pair => {
    const run = setRunOf(pair.id)?.run;
    if (!run) return [];
    return [
      { pair, x: run.x, y: run.y, of: 'skis' as const },
      { pair, x: run.massX, y: run.massY, of: 'mass' as const },
    ];
  });
}

export function PlanLines({ scale }: { scale: PlanScale }): JSX.Element {
  const dense = Math.min(1, scale.perGate / ROOMY);
  // Drawn at full weight, the lines of a long set would hide it.
  const style = dense < 1 ? { strokeWidth: Math.max(0.5, 2 * dense) } : undefined;
  const paths = pathsOf();
  const labelled = paths.filter(({ pair }) => pair.id === activePair.value?.id);
  return (
    <g clip-path="url(#set-plan-clip)">
      {paths.map(({ pair, x, y, of }) => (
        <path
          key={`${pair.id} ${of}`}
          class={of === 'mass' ? 'line mass-line' : 'line'}
          d={svgPath(x, y, scale)}
          stroke={pair.mark.colour}
          stroke-dasharray={of === 'mass' ? '1 4' : pair.mark.dash}
          style={style}
        />
      ))}
      {labelled.map(({ pair, x, y, of }) => (
        <g key={of} transform={`translate(${labelAt(x, y, scale, of)})`}>
          {of === 'skis' && <PairBadge mark={pair.mark} svg />}
          <text class="halo" x={20} dominant-baseline="central" fill={pair.mark.colour}>
            {t(of === 'skis' ? 'set.skis' : 'set.mass')}
          </text>
        </g>
      ))}
    </g>
  );
}

function svgPath(x: ArrayLike<number>, y: ArrayLike<number>, scale: PlanScale): string {
  let text = '';
  for (let i = 0; i < x.length; i++) {
    text += `${i === 0 ? 'M' : 'L'}${scale.down(y[i]!).toFixed(1)},${scale.across(x[i]!).toFixed(1)}`;
  }
  return text;
}

/** Where a line is named: outside its first bend in sight for the skis, inside for the mass. */
function labelAt(x: ArrayLike<number>, y: ArrayLike<number>, scale: PlanScale, of: DrawnPath['of']): string {
  const from = scale.invertDown(44);
  const to = scale.invertDown(44 + 1.6 * scale.perGate);
  let at = 0;
  for (let i = 0; i < y.length; i++) {
    if (y[i]! < from || y[i]! > to) continue;
    if (at === 0 || Math.abs(x[i]!) > Math.abs(x[at]!)) at = i;
  }
  const outward = Math.sign(x[at]!) || 1;
  const px = scale.across(x[at]!) + outward * (of === 'skis' ? 16 : -14);
  return `${scale.down(y[at]!).toFixed(1)},${px.toFixed(1)}`;
}
