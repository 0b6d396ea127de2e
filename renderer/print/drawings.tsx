import { line, scaleLinear } from 'd3';
import type { JSX } from 'preact';
import { cosineRadius, tableRadius } from '../../core/carve/index.ts';
import { DEGREE, type MeasureName, shownAs } from '../../core/units/index.ts';
import {
  asked,
  beamOf,
  bodyPath,
  edgePath,
  endPaths,
  halfOutline,
  LEAST_EDGE,
  MOST_EDGE,
  overhang,
  type Placing,
  radiusOf,
  tableOf,
} from '../answers/index.ts';
import { type ChosenPair, t, view } from '../state/index.ts';

const PAGE = 700;
const OUTLINE_HEIGHT = 92;
const WIDE = 3;

/** The outline along the page, to one scale along it and widths three times as large. */
export function OutlineOnPaper({ pair }: { pair: ChosenPair }): JSX.Element {
  const { rear, front } = overhang(pair);
  const perMetre = PAGE / (pair.ski.contactLength + rear + front);
  const middle = OUTLINE_HEIGHT / 2 - 8;
  const place: Placing = {
    x: along => (along + rear) * perMetre,
    y: half => middle - half * Math.min(WIDE * perMetre, (2 * middle - 8) / pair.ski.tipWidth),
  };
  const half = halfOutline(pair.pair);
  const boot = place.x(pair.ski.bootCentre);
  return (
    <svg
      class="sheet-outline"
      viewBox={`0 0 ${PAGE} ${OUTLINE_HEIGHT}`}
      role="img"
      aria-label={t('print.outline')}
    >
      <path class="body" d={bodyPath(half, place)} />
      {endPaths(pair, place).map(path => (
        <path key={path} class="thin" d={path} />
      ))}
      {([1, -1] as const).map(side => (
        <path key={side} d={edgePath(half, place, side)} />
      ))}
      <path class="thin" d={`M${boot},${middle - 7}v14M${boot - 7},${middle}h14`} />
      <text x={boot} y={OUTLINE_HEIGHT - 3} text-anchor="middle">
        {t('print.outlineNote', { times: WIDE })}
      </text>
    </svg>
  );
}

interface PaperLine {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly dotted?: boolean;
}

const WIDTH = 340;
const HEIGHT = 150;
const LEFT = 40;
const TOP = 8;
const BOTTOM = 32;

/** A small chart for paper: black lines, a few ticks, the unit on each axis. */
function PaperChart(props: {
  title: string;
  x: { label: string; measure: MeasureName };
  y: { label: string; measure: MeasureName };
  lines: readonly PaperLine[];
  none: string;
}): JSX.Element {
  const { title, lines, none } = props;
  const { system } = view.value;
  const xs = lines.flatMap(each => Array.from(each.x));
  const ys = lines.flatMap(each => Array.from(each.y)).filter(Number.isFinite);
  const toX = shownAs(props.x.measure, system);
  const toY = shownAs(props.y.measure, system);
  const x = scaleLinear()
    .domain([Math.min(...xs) * toX.factor, Math.max(...xs) * toX.factor])
    .range([LEFT, WIDTH - 8]);
  const y = scaleLinear()
    .domain([0, Math.max(...ys) * toY.factor])
    .nice(4)
    .range([HEIGHT - BOTTOM, TOP]);
  const path = ({ x: along, y: up }: PaperLine) =>
    line<number>(
      at => x(along[at]! * toX.factor),
      at => y(up[at]! * toY.factor),
    )(Array.from({ length: along.length }, (_, at) => at)) ?? '';
  return (
    <figure>
      <figcaption>{title}</figcaption>
      {lines.length === 0 ? (
        <p>{none}</p>
      ) : (
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={title}>
          {y.ticks(4).map(tick => (
            <g key={tick}>
              <path class="grid" d={`M${LEFT},${y(tick)}H${WIDTH - 8}`} />
              <text x={LEFT - 5} y={y(tick)} dy="0.32em" text-anchor="end">
                {tick}
              </text>
            </g>
          ))}
          {x.ticks(6).map(tick => (
            <text key={tick} x={x(tick)} y={HEIGHT - BOTTOM + 12} text-anchor="middle">
              {tick}
            </text>
          ))}
          <text x={(LEFT + WIDTH) / 2} y={HEIGHT - 4} text-anchor="middle">
            {t('print.axes', {
              across: props.x.label,
              acrossUnit: toX.unit,
              up: props.y.label,
              upUnit: toY.unit,
            })}
          </text>
          {lines.map((each, at) => (
            <path
              key={at === 0 ? 'first' : 'second'}
              class={each.dotted ? 'dotted' : undefined}
              d={path(each)}
            />
          ))}
        </svg>
      )}
    </figure>
  );
}

export function StiffnessOnPaper({ pair }: { pair: ChosenPair }): JSX.Element {
  const { bending } = beamOf(pair.pair);
  const at = Float64Array.from({ length: 101 }, (_, i) => (i / 100) * pair.ski.contactLength);
  return (
    <PaperChart
      title={t('print.stiffnessTitle')}
      x={{ label: t('print.fromRearContact'), measure: 'station' }}
      y={{ label: t('print.bendingSymbol'), measure: 'stiffness' }}
      lines={bending ? [{ x: at, y: at.map(x => bending(x)) }] : []}
      none={t('print.noBending')}
    />
  );
}

export function RadiusOnPaper({ pair }: { pair: ChosenPair }): JSX.Element {
  const { hardness, fore, load } = asked.value;
  const { table } = tableOf(pair.pair, hardness, fore).value;
  const sidecut = radiusOf(pair.pair);
  const angles = Float64Array.from({ length: MOST_EDGE - LEAST_EDGE + 1 }, (_, at) => LEAST_EDGE + at);
  const lines: PaperLine[] = [
    ...(table ? [{ x: angles, y: angles.map(each => tableRadius(table, each * DEGREE, load)) }] : []),
    ...(sidecut === null
      ? []
      : [{ x: angles, y: angles.map(each => cosineRadius(sidecut, each * DEGREE)), dotted: true }]),
  ];
  return (
    <PaperChart
      title={
        table
          ? t('print.radiusBent', {
              load: { quantity: 'force', value: load },
              snow: { quantity: 'hardness', value: hardness },
            })
          : t('carve.title.cosineRadius')
      }
      x={{ label: t('print.edgeAngle'), measure: 'angleDeg' }}
      y={{ label: t('print.radius'), measure: 'radius' }}
      lines={lines}
      none={t('print.noSidecut')}
    />
  );
}
