import './plan-figure.css';
import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { type PairRun, runs } from '../../answers/index.ts';
import { Figure, type Size } from '../../kit/index.ts';
import { t, view } from '../../state/index.ts';
import { clock } from './clock.ts';
import { LimitKey, LimitPatterns, leadStretches, limitFill } from './limit-bands.tsx';
import { rowAt, stretchesOf } from './skids.ts';

const MARGIN = 30;
const MOST_POINTS = 700;
const SCOPE = 'plan';

/** The tracks from above, down the slope to the right: skis and mass, gates, slides, and what holds the skier back. */
export function PlanFigure(): JSX.Element {
  const shown = runs.value.runs;
  return (
    <>
      <Figure
        title={t('common.fromAbove')}
        description={t('slope.planDescription')}
        note={t('slope.planNote')}
        rows={() => planRows(shown)}
        moving={size => <Dots size={size} shown={shown} />}
      >
        {size => <Paths size={size} shown={shown} />}
      </Figure>
      <LimitKey />
    </>
  );
}

interface PlanProps {
  readonly shown: readonly PairRun[];
  readonly size: Size;
}

export interface Pole {
  readonly x: number;
  readonly y: number;
}

/** Turning poles of a rhythm, m; none where no rhythm is skied. */
export function polesOf(run: Pick<PairRun, 'plan'> | undefined): readonly Pole[] {
  const programme = run?.plan.programme;
  if (programme?.kind !== 'rhythm') return [];
  return Array.from({ length: programme.gates + 1 }, (_, i) => ({
    x: (i % 2 === 0 ? 1 : -1) * (programme.offset / 2),
    y: i * programme.spacing,
  }));
}

/** Metres to px: the way down runs to the right, so the skier's right is at the bottom. */
function scaleOf({ shown, size }: PlanProps) {
  let down = 1;
  let left = -1;
  let right = 1;
  for (const { track } of shown) {
    for (let i = 0; i < track.t.length; i++) {
      down = Math.max(down, track.y[i]!);
      left = Math.min(left, track.x[i]!);
      right = Math.max(right, track.x[i]!);
    }
  }
  const scale = Math.min((size.width - 2 * MARGIN) / down, (size.height - 2 * MARGIN) / (right - left));
  const middle = (right + left) / 2;
  const begin = (size.width - scale * down) / 2;
  return {
    scale,
    down,
    px: (y: number) => begin + y * scale,
    py: (x: number) => size.height / 2 - 6 + (x - middle) * scale,
  };
}

type Scale = ReturnType<typeof scaleOf>;

function Paths({ shown, size }: PlanProps): JSX.Element {
  const at = scaleOf({ shown, size });
  const lead = shown[0];
  const bar = at.down > 120 ? 50 : at.down > 60 ? 20 : at.down > 25 ? 10 : 5;
  return (
    <g>
      <LimitPatterns scope={SCOPE} />
      {lead &&
        leadStretches.value.map(({ by, from, to }) => (
          <path key={from} class="limit-way" d={way(lead, from, to, at)} stroke={limitFill(SCOPE, by)} />
        ))}
      {shown.map(run => (
        <g key={run.pair.id}>
          {stretchesOf(run.track).map(({ from, to }) => (
            <path
              key={from}
              class="skid-way"
              d={way(run, rowAt(run.track, from), rowAt(run.track, to), at)}
              stroke={run.pair.mark.colour}
            />
          ))}
          <path
            class="mass-way"
            d={way(run, 0, run.track.t.length - 1, at, 'mass')}
            stroke={run.pair.mark.colour}
          />
          <path
            class="line"
            d={way(run, 0, run.track.t.length - 1, at)}
            stroke={run.pair.mark.colour}
            stroke-dasharray={run.pair.mark.dash}
          />
        </g>
      ))}
      {polesOf(lead).map(({ x, y }, i) => (
        <g key={y} transform={`translate(${at.px(y)},${at.py(x)})`}>
          <circle class="pole" data-side={i % 2} r={5} />
        </g>
      ))}
      {lead && <PathNames run={lead} at={at} />}
      <path class="scale-bar" d={`M${MARGIN},${size.height - 8}h${bar * at.scale}`} />
      <text x={MARGIN + bar * at.scale + 8} y={size.height - 8} dominant-baseline="central">
        {formatQuantity(bar, 'distance', { system: view.value.system, decimals: 0 }).text}
      </text>
    </g>
  );
}

/** The two paths by name, where they are furthest apart. */
function PathNames({ run, at }: { readonly run: PairRun; readonly at: Scale }): JSX.Element {
  const { x, y, massX, massY, t: time } = run.track;
  let best = 0;
  for (let i = 0; i < time.length; i++) {
    const inside = y[i]! > 0.15 * at.down && y[i]! < 0.85 * at.down;
    if (inside && Math.abs(x[i]! - massX[i]!) > Math.abs(x[best]! - massX[best]!)) best = i;
  }
  const side = Math.sign(x[best]! - massX[best]!) || 1;
  return (
    <g class="path-names">
      <text
        class="halo"
        x={at.px(y[best]!)}
        y={at.py(x[best]!) + 17 * side}
        text-anchor="middle"
        dominant-baseline="central"
      >
        {t('slope.skis')}
      </text>
      <text
        class="halo"
        x={at.px(massY[best]!)}
        y={at.py(massX[best]!) - 12 * side}
        text-anchor="middle"
        dominant-baseline="central"
      >
        {t('slope.mass')}
      </text>
    </g>
  );
}

function Dots({ shown, size }: PlanProps): JSX.Element {
  const at = scaleOf({ shown, size });
  return (
    <>
      {shown.map(run => {
        const { track, pair } = run;
        const row = rowAt(track, clock.value);
        const skis = [at.px(track.y[row]!), at.py(track.x[row]!)] as const;
        const mass = [at.px(track.massY[row]!), at.py(track.massX[row]!)] as const;
        return (
          <g key={pair.id}>
            <path class="leg-line" d={`M${skis}L${mass}`} stroke={pair.mark.colour} />
            <circle class="mass-dot" cx={mass[0]} cy={mass[1]} r={4.5} stroke={pair.mark.colour} />
            <g transform={`translate(${skis})`}>
              <circle r={9} fill={pair.mark.colour} />
              <text class="dot-letter" text-anchor="middle" dominant-baseline="central" fill="var(--on-pair)">
                {pair.mark.letter}
              </text>
            </g>
          </g>
        );
      })}
    </>
  );
}

function way(run: PairRun, from: number, to: number, at: Scale, of: 'skis' | 'mass' = 'skis'): string {
  const { track } = run;
  const [x, y] = of === 'skis' ? [track.x, track.y] : [track.massX, track.massY];
  const step = Math.max(1, Math.floor(track.t.length / MOST_POINTS));
  let path = '';
  const put = (i: number) => {
    path += `${path ? 'L' : 'M'}${at.px(y[i]!).toFixed(1)},${at.py(x[i]!).toFixed(1)}`;
  };
  for (let i = from; i < to; i += step) put(i);
  put(to);
  return path;
}

/** Both paths as rows for a file, m. */
function planRows(shown: readonly PairRun[]): (string | number)[][] {
  const rows: (string | number)[][] = [
    [
      t('common.columnPair'),
      'time (s)',
      t('slope.column.skisAcross'),
      t('slope.column.skisDown'),
      t('slope.column.massAcross'),
      t('slope.column.massDown'),
    ],
  ];
  for (const { pair, track } of shown) {
    for (let i = 0; i < track.t.length; i++) {
      rows.push([
        pair.name,
        ...[track.t, track.x, track.y, track.massX, track.massY].map(of => Number(of[i]!.toPrecision(7))),
      ]);
    }
  }
  return rows;
}
