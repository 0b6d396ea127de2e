import type { JSX } from 'preact';
import { formatQuantity, MM } from '../../../core/units/index.ts';
import { bodyPath, edgePath, endPaths, halfOutline, overhang, type Placing } from '../../answers/index.ts';
import { Figure, PairBadge, type Size } from '../../kit/index.ts';
import { type ChosenPair, t, view } from '../../state/index.ts';

const NAME = 20;
const SIDE = 24;
const WIDE = 5;

/** Each pair from above in a row of its own, boot centres in line, all to one scale. */
export function OutlineRows({ pairs }: { pairs: readonly ChosenPair[] }): JSX.Element {
  return (
    <Figure
      title={t('common.fromAbove')}
      description={t('compare.outlinesOf', { pairs: pairs.map(pair => pair.name) })}
      note={t('compare.oneScale', { times: WIDE })}
      height={pairs.length * 96 + 8}
      rows={() => widthRows(pairs)}
    >
      {size => <Rows pairs={pairs} size={size} />}
    </Figure>
  );
}

function Rows({ pairs, size }: { pairs: readonly ChosenPair[]; size: Size }): JSX.Element {
  const behind = Math.max(...pairs.map(pair => pair.ski.bootCentre + overhang(pair).rear));
  const ahead = Math.max(
    ...pairs.map(pair => pair.ski.contactLength + overhang(pair).front - pair.ski.bootCentre),
  );
  const widest = Math.max(...pairs.flatMap(pair => [pair.ski.tipWidth, pair.ski.tailWidth]));
  const row = size.height / pairs.length;
  const perMetre = (size.width - 2 * SIDE) / (behind + ahead);
  // Widths are drawn five times as large along with the length, or as far as the row has room.
  const across = Math.min(perMetre * WIDE, (row - NAME - 14) / widest);
  const boot = SIDE + behind * perMetre;
  return (
    <g>
      <line class="boot-line" x1={boot} x2={boot} y1={0} y2={size.height} />
      {pairs.map((pair, at) => {
        const middle = at * row + NAME + (row - NAME) / 2;
        const place: Placing = {
          x: along => boot + (along - pair.ski.bootCentre) * perMetre,
          y: half => middle - half * across,
        };
        return <Row key={pair.id} pair={pair} place={place} top={at * row} />;
      })}
    </g>
  );
}

function Row({ pair, place, top }: { pair: ChosenPair; place: Placing; top: number }): JSX.Element {
  const { colour, dash } = pair.mark;
  const { system } = view.value;
  const { ski } = pair;
  const half = halfOutline(pair.pair);
  const text = (value: number) => formatQuantity(value, 'width', { system }).value;
  const { unit } = formatQuantity(0, 'width', { system });
  return (
    <g>
      <g transform={`translate(${SIDE - 8},${top + 10})`}>
        <PairBadge mark={pair.mark} svg />
        <text class="halo" x={22} dominant-baseline="central">
          <tspan font-weight="600">{pair.name}</tspan>
          {`  ${text(ski.tailWidth)} – ${text(ski.waistWidth)} – ${text(ski.tipWidth)} ${unit}, ${formatQuantity(ski.length, 'skiLength', { system }).text}`}
        </text>
      </g>
      <path d={bodyPath(half, place)} fill="var(--ski-fill)" fill-opacity={0.55} />
      {endPaths(pair, place).map(path => (
        <path key={path} d={path} fill="none" stroke={colour} stroke-opacity={0.6} />
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

function widthRows(pairs: readonly ChosenPair[]): (string | number)[][] {
  const rows: (string | number)[][] = [
    [t('common.columnPair'), t('common.columnFromBootCentre'), t('common.columnWidth')],
  ];
  for (const pair of pairs) {
    const { x, y } = halfOutline(pair.pair);
    for (let at = 0; at < x.length; at++) {
      rows.push([
        pair.name,
        ((x[at]! - pair.ski.bootCentre) / MM).toFixed(1),
        ((2 * y[at]!) / MM).toFixed(3),
      ]);
    }
  }
  return rows;
}
