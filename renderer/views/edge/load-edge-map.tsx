import type { JSX } from 'preact';
import { type RadiusTable, tableRadius } from '../../../core/carve/index.ts';
import { DEGREE, decimal, formatQuantity, shownAs } from '../../../core/units/index.ts';
import {
  asked,
  LEAST_EDGE,
  LEAST_LOAD,
  MOST_EDGE,
  MOST_LOAD,
  type TableShown,
  tableShown,
  turnOf,
} from '../../answers/index.ts';
import { TableProgress } from '../../controls/index.ts';
import { axisTitle, Figure, PairBadge, type Size, tickRoom, ticksAcross, ticksUp } from '../../kit/index.ts';
import { type ChosenPair, changeConditions, conditions, settle, t, view } from '../../state/index.ts';
import { Isolines } from './isolines.tsx';
import { type Scales, scalesFor } from './map-scales.ts';

const TOP = 26;
const BOTTOM = 40;
const RIGHT = 14;

/** Turn radius over edge angle and load of one pair, with the point that is asked for now. */
export function LoadEdgeMap({ pair }: { pair: ChosenPair }): JSX.Element {
  const shown = tableShown(pair);
  const { table } = shown;
  return (
    <Figure
      title={t('edge.map.title')}
      note={<PairBadge mark={pair.mark} />}
      description={t('edge.map.description', { name: pair.name })}
      class={shown.stale ? 'stale' : undefined}
      rows={table ? () => tableRows(table) : undefined}
    >
      {size =>
        table ? (
          <Drawing shown={shown} table={table} pair={pair} size={size} />
        ) : (
          <foreignObject width={size.width} height={size.height}>
            <div class="figure-empty">
              {shown.missing
                ? t('edge.map.needsStiffness')
                : (shown.failure ?? <TableProgress tables={[shown]} said={t('edge.map.empty')} />)}
            </div>
          </foreignObject>
        )
      }
    </Figure>
  );
}

function Drawing(props: {
  readonly shown: TableShown;
  readonly table: RadiusTable;
  readonly pair: ChosenPair;
  readonly size: Size;
}): JSX.Element {
  const { shown, table, pair, size } = props;
  const { progress } = shown;
  const unit = shownAs('radius', view.value.system);
  const height = Math.max(40, size.height - TOP - BOTTOM);
  const loads = ticksUp([LEAST_LOAD, MOST_LOAD], shownAs('force', view.value.system), height);
  const left = tickRoom(loads);
  const width = Math.max(40, size.width - left - RIGHT);
  const scales = scalesFor(width, height);
  return (
    <g transform={`translate(${left},${TOP})`}>
      <MapAxes scales={scales} loads={loads} left={left} width={width} height={height} />
      <Isolines table={table} colour={pair.mark.colour} width={width} height={height} />
      <text x={width} y={-11} text-anchor="end">
        {progress === null
          ? t('edge.map.radiusIn', { unit: unit.unit })
          : t('controls.progress', { doing: t('controls.solving'), share: decimal(progress * 100, 0) })}
      </text>
      <Point scales={scales} table={table} pair={pair} width={width} height={height} />
    </g>
  );
}

function MapAxes(props: {
  scales: Scales;
  loads: ReturnType<typeof ticksUp>;
  left: number;
  width: number;
  height: number;
}): JSX.Element {
  const { x, y } = props.scales;
  const force = shownAs('force', view.value.system);
  const angles = ticksAcross(x.domain(), shownAs('angleDeg', view.value.system), props.width);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in here takes the focus
    <g class="axes" aria-hidden="true">
      {props.loads.map(({ held, text }) => (
        <g key={text} transform={`translate(0,${y(held)})`}>
          <line class="grid" x2={props.width} />
          <text x={-8} text-anchor="end" dominant-baseline="central">
            {text}
          </text>
        </g>
      ))}
      {angles.map(({ held, text }) => (
        <g key={text} transform={`translate(${x(held)},${props.height})`}>
          <line class="tick" y2={4} />
          <text y={16} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <line class="axis" y1={props.height} y2={props.height} x2={props.width} />
      <text class="axis-title" x={props.width} y={props.height + 33} text-anchor="end">
        {t('edge.map.edgeAxis')}
      </text>
      <text class="axis-title" x={8 - props.left} y={-11}>
        {axisTitle(t('condition.load'), force.unit, props.width / 2)}
      </text>
    </g>
  );
}

/** The present angle and load; the whole map takes the pointer, the point takes the keys. */
function Point(props: {
  scales: Scales;
  table: RadiusTable;
  pair: ChosenPair;
  width: number;
  height: number;
}): JSX.Element {
  const { x, y } = props.scales;
  const { edgeDeg, loadN } = conditions.value;
  const { system } = view.value;
  const { edgeAngle, load } = asked.value;
  // The turn solved for just this point, as the readings have it; between the table's points until it is there.
  const turn = turnOf(props.pair).solved ?? tableRadius(props.table, edgeAngle, load);
  const radius = formatQuantity(turn, 'radius', { system });
  const set = (edge: number, force: number) =>
    changeConditions(
      t('edge.map.step'),
      {
        edgeDeg: Math.min(MOST_EDGE, Math.max(LEAST_EDGE, edge)),
        loadN: Math.min(MOST_LOAD, Math.max(LEAST_LOAD, force)),
      },
      'edge-load',
    );
  const follow = (event: PointerEvent) => {
    const field = event.currentTarget as SVGRectElement;
    if (!field.hasPointerCapture(event.pointerId)) return;
    const box = field.getBoundingClientRect();
    set(
      Math.round(x.invert(event.clientX - box.left)),
      Math.round(y.invert(event.clientY - box.top) / 50) * 50,
    );
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const fine = event.shiftKey ? 0.1 : 1;
    const moves: Record<string, [edge: number, load: number]> = {
      ArrowLeft: [-fine, 0],
      ArrowRight: [fine, 0],
      ArrowUp: [0, 50 * fine],
      ArrowDown: [0, -50 * fine],
    };
    const move = moves[event.key];
    if (!move) return;
    event.preventDefault();
    event.stopPropagation();
    set(Number((edgeDeg + move[0]).toFixed(6)), loadN + move[1]);
  };
  const px = x(Math.min(MOST_EDGE, Math.max(LEAST_EDGE, edgeDeg)));
  const py = y(Math.min(MOST_LOAD, Math.max(LEAST_LOAD, loadN)));
  const side = px > props.width - 70 ? -1 : 1;
  return (
    <g data-control>
      <rect
        class="map-field"
        width={props.width}
        height={props.height}
        onPointerDown={event => {
          event.currentTarget.setPointerCapture(event.pointerId);
          follow(event);
        }}
        onPointerMove={follow}
        onPointerUp={settle}
      />
      <g
        class="handle map-point"
        transform={`translate(${px},${py})`}
        role="slider"
        tabindex={0}
        aria-label={t('edge.map.handle')}
        aria-valuemin={LEAST_EDGE}
        aria-valuemax={MOST_EDGE}
        aria-valuenow={edgeDeg}
        aria-valuetext={t('edge.map.point', {
          edge: formatQuantity(edgeDeg, 'angleDeg').text,
          load: formatQuantity(loadN, 'force', { system }).text,
          radius: radius.text,
        })}
        onKeyDown={onKeyDown}
        onBlur={settle}
      >
        <circle class="handle-reach" r={16} />
        <circle class="handle-grip" r={6} />
        <text x={12 * side} y={-11} text-anchor={side > 0 ? 'start' : 'end'}>
          {radius.text}
        </text>
      </g>
    </g>
  );
}

function tableRows({ edgeAngles, loads, radii }: RadiusTable): (string | number)[][] {
  const rows: (string | number)[][] = [
    [t('edge.column.edgeAngle'), t('edge.column.load'), t('edge.column.turnRadius')],
  ];
  edgeAngles.forEach((angle, row) => {
    loads.forEach((load, column) => {
      rows.push([
        (angle / DEGREE).toFixed(3),
        load.toFixed(1),
        radii[row * loads.length + column]!.toFixed(4),
      ]);
    });
  });
  return rows;
}
