import type { JSX } from 'preact';
import { arcsAndTraverses, chosenRanking, quickLineOf } from '../../answers/index.ts';
import { PairBadge } from '../../kit/index.ts';
import { type ChosenPair, chosenPairs } from '../../state/index.ts';
import type { PlanScale } from './plan-scale.ts';

/** px between lines that would lie on one another. */
const APART = 4;
/** px from gate to gate that leave room for the lines at full weight. */
const ROOMY = 24;

interface DrawnPath {
  readonly pair: ChosenPair;
  readonly path: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> };
  readonly quick: boolean;
}

/**
 * The line of each chosen pair: the drawn line where it carves or drifts round it, its own arcs and traverses
 * where it turns more tightly, and its quick line where one was found.
 */
export function pathsOf(): DrawnPath[] {
  const answer = chosenRanking.value.value;
  if (!answer) return [];
  const { ranking, pairs, carvedRadii } = answer;
  const paths: DrawnPath[] = [];
  for (const pair of chosenPairs.value) {
    const at = ranking.pairs.findIndex(each => pairs[each.index].id === pair.id);
    if (at < 0) continue;
    const own = ranking.pairs[at].gatesTight > 0 ? arcsAndTraverses(ranking.line, radiiAt(at)) : null;
    paths.push({ pair, path: own ?? ranking.line, quick: false });
    const quick = quickLineOf(pair.id)?.line;
    if (quick) paths.push({ pair, path: quick, quick: true });
  }
  return paths;

  function radiiAt(at: number): number[] {
    return ranking.pairs[at].report.gates.map((gate, i) =>
      gate.mode === 'tight arcs' ? carvedRadii[at][i] : gate.neededRadius,
    );
  }
}

export function PlanLines({ scale }: { scale: PlanScale }): JSX.Element {
  const paths = pathsOf();
  const plain = paths.filter(each => !each.quick);
  /** Pairs take much the same way, so each line keeps its place beside the others. */
  const dense = Math.min(1, scale.perGate / ROOMY);
  const aside = (place: number) => (place - (plain.length - 1) / 2) * APART * dense;
  // Drawn at full weight, the lines of a long set would hide it.
  const style = dense < 1 ? { strokeWidth: Math.max(0.5, 2 * dense) } : undefined;
  return (
    <g clip-path="url(#set-plan-clip)">
      {plain.map(({ pair, path }, place) => (
        <path
          key={pair.id}
          class="line"
          d={svgPath(path, scale, aside(place))}
          stroke={pair.mark.colour}
          stroke-dasharray={pair.mark.dash}
          style={style}
        />
      ))}
      {paths
        .filter(each => each.quick)
        .map(({ pair, path }) => (
          <g key={pair.id}>
            <path class="line quick-under" d={svgPath(path, scale)} />
            <path class="line quick" d={svgPath(path, scale)} stroke={pair.mark.colour} />
            <g transform={`translate(${labelAt(path, scale)})`}>
              <PairBadge mark={pair.mark} svg />
              <text class="halo" x={20} dominant-baseline="central" fill={pair.mark.colour}>
                quick line
              </text>
            </g>
          </g>
        ))}
    </g>
  );
}

/** The path in px, `aside` px to the right of its way. */
function svgPath({ x, y }: DrawnPath['path'], scale: PlanScale, aside = 0): string {
  let text = '';
  for (let i = 0; i < x.length; i++) {
    const before = Math.max(0, i - 1);
    const after = Math.min(x.length - 1, i + 1);
    const along = scale.down(y[after]) - scale.down(y[before]);
    const across = scale.across(x[after]) - scale.across(x[before]);
    const share = aside / (Math.hypot(along, across) || 1);
    const px = scale.down(y[i]) - share * across;
    const py = scale.across(x[i]) + share * along;
    text += `${i === 0 ? 'M' : 'L'}${px.toFixed(1)},${py.toFixed(1)}`;
  }
  return text;
}

function labelAt({ x, y }: DrawnPath['path'], scale: PlanScale): string {
  const wanted = scale.invertDown(44);
  let at = 0;
  while (at < y.length - 1 && y[at] < wanted) at++;
  return `${scale.down(y[at]).toFixed(1)},${(scale.across(x[at]) - 22).toFixed(1)}`;
}
