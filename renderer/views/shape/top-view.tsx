import type { JSX } from 'preact';
import { formatQuantity, MM } from '../../../core/units/index.ts';
import {
  bodyPath,
  edgePath,
  endPaths,
  halfOutline,
  overhang,
  type Placing,
  sidecutOf,
} from '../../answers/index.ts';
import { Figure, type Size } from '../../kit/index.ts';
import { activePair, type ChosenPair, chosenPairs, t, view } from '../../state/index.ts';
import { ExaggerationControl } from './exaggeration.tsx';
import { FittedArc } from './fitted-arc.tsx';
import { WidthHandles } from './width-handles.tsx';

const SIDE = 28;
const ABOVE = 34;
const BELOW = 64;

/** Outlines from above, lying on one another at the boot centre, with the active pair's widths to drag. */
export function TopView(): JSX.Element {
  const pairs = chosenPairs.value;
  return (
    <Figure
      title={t('common.fromAbove')}
      description={t('shape.topViewOf', { pairs: pairs.map(pair => pair.name) })}
      tools={<ExaggerationControl />}
      note={legend(pairs)}
      rows={() => outlineRows(pairs)}
    >
      {size => <Outlines pairs={pairs} size={size} />}
    </Figure>
  );
}

function legend(pairs: readonly ChosenPair[]): string {
  const stations = activePair.value?.ski.widthStations ? t('shape.measuredStations') : '';
  const together = pairs.length > 1 ? t('shape.together') : '';
  return [stations, together, t('shape.dotted')].filter(Boolean).join(', ');
}

function Outlines({ pairs, size }: { pairs: readonly ChosenPair[]; size: Size }): JSX.Element {
  const active = activePair.value!;
  const behind = Math.max(...pairs.map(pair => pair.ski.bootCentre + overhang(pair).rear));
  const ahead = Math.max(
    ...pairs.map(pair => pair.ski.contactLength + overhang(pair).front - pair.ski.bootCentre),
  );
  const widest = Math.max(...pairs.flatMap(pair => [pair.ski.tipWidth, pair.ski.tailWidth]));
  const wide = view.value.exaggeration;
  const room = size.height - ABOVE - BELOW;
  const perMetre = Math.min((size.width - 2 * SIDE) / (behind + ahead), room / (widest * wide));
  const centre = size.width / 2 + ((behind - ahead) / 2) * perMetre;
  const middle = ABOVE + room / 2;
  const placing = (pair: ChosenPair): Placing => ({
    x: along => centre + (along - pair.ski.bootCentre) * perMetre,
    y: across => middle - across * perMetre * wide,
  });
  const place = placing(active);
  const inOrder = [...pairs.filter(pair => pair.id !== active.id), active];
  return (
    <g>
      <line class="midline" x1={SIDE} x2={size.width - SIDE} y1={middle} y2={middle} />
      {inOrder.map(pair => (
        <Outline key={pair.id} pair={pair} place={placing(pair)} filled={pair.id === active.id} />
      ))}
      <FittedArc pair={active} place={place} width={size.width} />
      <BootMark pair={active} place={place} middle={middle} />
      <StationScale pair={active} place={place} y={size.height - 30} />
      <WidthHandles pair={active} place={place} perMetre={perMetre * wide} along={perMetre} />
    </g>
  );
}

function Outline({
  pair,
  place,
  filled,
}: {
  pair: ChosenPair;
  place: Placing;
  filled: boolean;
}): JSX.Element {
  const { colour, dash } = pair.mark;
  const half = halfOutline(pair.pair);
  return (
    <g class={filled ? 'outline filled' : 'outline'}>
      {endPaths(pair, place).map(path => (
        <path key={path} class="outline-end" d={path} stroke={colour} />
      ))}
      {filled && <path class="outline-body" d={bodyPath(half, place)} />}
      {[0, half.x.length - 1].map(at => (
        <line
          key={at}
          class="outline-end"
          x1={place.x(half.x[at]!)}
          x2={place.x(half.x[at]!)}
          y1={place.y(half.y[at]!)}
          y2={place.y(-half.y[at]!)}
          stroke={colour}
        />
      ))}
      {([1, -1] as const).map(side => (
        <path
          key={side}
          class="line"
          d={edgePath(half, place, side)}
          stroke={colour}
          stroke-dasharray={dash}
        />
      ))}
    </g>
  );
}

function BootMark({
  pair,
  place,
  middle,
}: {
  pair: ChosenPair;
  place: Placing;
  middle: number;
}): JSX.Element {
  const x = place.x(pair.ski.bootCentre);
  return <path class="boot-mark" d={`M${x},${middle - 6}v12M${x - 6},${middle}h12`} />;
}

/** Stations from the rear contact point, under the outline. */
function StationScale({ pair, place, y }: { pair: ChosenPair; place: Placing; y: number }): JSX.Element {
  const { system } = view.value;
  const length = pair.ski.contactLength;
  const perMetre = place.x(1) - place.x(0);
  const unit = system === 'metric' ? 0.1 : 0.127;
  const step = unit * ([1, 2, 4, 8].find(each => each * unit * perMetre >= 48) ?? 8);
  const count = Math.floor(length / step + 1e-9);
  const stations = Array.from({ length: count + 1 }, (_, at) => at * step);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
    <g class="axes" aria-hidden="true">
      <line class="axis" x1={place.x(0)} x2={place.x(length)} y1={y} y2={y} />
      <path class="boot-mark" d={`M${place.x(pair.ski.bootCentre)},${y}v-7`} />
      <text x={place.x(pair.ski.bootCentre)} y={y - 11} text-anchor="middle">
        {t('shape.bootCentre')}
      </text>
      {stations.map(at => (
        <g key={at} transform={`translate(${place.x(at)},${y})`}>
          <line class="tick" y2={4} />
          <text y={16} text-anchor="middle">
            {formatQuantity(at, 'station', { system, decimals: 0 }).value}
          </text>
        </g>
      ))}
      <text class="axis-title" x={place.x(length)} y={y + 16} dx={26}>
        {formatQuantity(0, 'station', { system }).unit}
      </text>
    </g>
  );
}

function outlineRows(pairs: readonly ChosenPair[]): (string | number)[][] {
  const rows: (string | number)[][] = [
    [
      t('common.columnPair'),
      t('common.columnStation'),
      t('common.columnWidth'),
      t('common.columnSidecutRadius'),
    ],
  ];
  for (const pair of pairs) {
    const { x, y } = halfOutline(pair.pair);
    const radius = sidecutOf(pair.pair).radius.toFixed(3);
    for (let at = 0; at < x.length; at++) {
      rows.push([pair.name, (x[at]! / MM).toFixed(1), ((2 * y[at]!) / MM).toFixed(3), radius]);
    }
  }
  return rows;
}
