import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { formatQuantity } from '../../../core/units/index.ts';
import { Figure, type Size } from '../../kit/index.ts';
import { view } from '../../state/index.ts';
import { clock, flatPlayer, usePlayer } from './clock.ts';
import { duration, type PairRun, runs } from './runs.ts';
import { rowAt, stretchesOf } from './skids.ts';

const MARGIN = 26;
const MOST_POINTS = 500;

/** The tracks from above, without a scene: for machines that draw no WebGL. */
export function PlanView({ why }: { why: string }): JSX.Element {
  useEffect(() => {
    const player = flatPlayer(() => duration.value);
    usePlayer(player);
    return () => {
      player.stop();
      usePlayer(null);
    };
  }, []);
  const shown = runs.value.runs;
  return (
    <div class="plan">
      <p class="plan-note" role="note">
        {why}, so the hill is shown as a flat plan: down the slope runs to the right. Everything else works as
        it does beside the hill.
      </p>
      <Figure title="The tracks from above" description="Plan of the tracks, down the slope to the right">
        {size => <Tracks runs={shown} size={size} />}
      </Figure>
    </div>
  );
}

function Tracks({ runs: shown, size }: { runs: readonly PairRun[]; size: Size }): JSX.Element {
  let down = 1;
  let left = -2;
  let right = 2;
  for (const { track } of shown) {
    for (let i = 0; i < track.t.length; i++) {
      down = Math.max(down, track.y[i]!);
      left = Math.min(left, track.x[i]!);
      right = Math.max(right, track.x[i]!);
    }
  }
  const scale = Math.min((size.width - 2 * MARGIN) / down, (size.height - 2 * MARGIN) / (right - left));
  const middle = (right + left) / 2;
  const px = (y: number) => MARGIN + y * scale;
  // The skier's right is at the bottom of a plan whose way down runs to the right.
  const py = (x: number) => size.height / 2 + (x - middle) * scale;
  const bar = down > 60 ? 20 : 10;
  return (
    <g>
      {shown.map(run => (
        <g key={run.pair.id}>
          {stretchesOf(run.track).map(({ from, to }) => (
            <path
              key={from}
              class="skid-way"
              d={way(run, rowAt(run.track, from), rowAt(run.track, to), px, py)}
              stroke={run.pair.mark.colour}
            />
          ))}
          <path
            class="line"
            d={way(run, 0, run.track.t.length - 1, px, py)}
            stroke={run.pair.mark.colour}
            stroke-dasharray={run.pair.mark.dash}
          />
          <Dot run={run} px={px} py={py} />
        </g>
      ))}
      <path class="scale-bar" d={`M${px(0)},${size.height - 8}h${bar * scale}`} />
      <text x={px(0) + bar * scale + 8} y={size.height - 8} dominant-baseline="central">
        {formatQuantity(bar, 'distance', { system: view.value.system, decimals: 0 }).text}
      </text>
    </g>
  );
}

interface Placed {
  readonly run: PairRun;
  px(y: number): number;
  py(x: number): number;
}

function Dot({ run, px, py }: Placed): JSX.Element {
  const row = rowAt(run.track, clock.value);
  const at = `translate(${px(run.track.y[row]!)},${py(run.track.x[row]!)})`;
  return (
    <g transform={at}>
      <circle r={9} fill={run.pair.mark.colour} />
      <text class="dot-letter" text-anchor="middle" dominant-baseline="central" fill="var(--on-pair)">
        {run.pair.mark.letter}
      </text>
    </g>
  );
}

function way(run: PairRun, from: number, to: number, px: Placed['px'], py: Placed['py']): string {
  const { x, y } = run.track;
  const step = Math.max(1, Math.floor(run.track.t.length / MOST_POINTS));
  let path = '';
  for (let i = from; i <= to; i += step) {
    path += `${path ? 'L' : 'M'}${px(y[i]!).toFixed(1)},${py(x[i]!).toFixed(1)}`;
  }
  return path;
}
