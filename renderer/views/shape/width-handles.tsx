import type { JSX } from 'preact';
import { MM } from '../../../core/units/index.ts';
import type { Placing } from '../../answers/index.ts';
import { Handle } from '../../kit/index.ts';
import { type ChosenPair, changePair, t } from '../../state/index.ts';

interface Props {
  readonly pair: ChosenPair;
  readonly place: Placing;
  /** px per metre across and along. */
  readonly perMetre: number;
  readonly along: number;
}

type End = 'tip' | 'waist' | 'tail';
type WidthField = 'tipWidthMm' | 'waistWidthMm' | 'tailWidthMm';

/** Grips on the upper edge for the three widths, and on the lower edge for the waist station. */
export function WidthHandles({ pair, place, perMetre, along }: Props): JSX.Element {
  const { tipWidthMm: tip, waistWidthMm: waist, tailWidthMm: tail, contactLengthMm } = pair.pair;
  const locked = pair.readOnly !== undefined || pair.ski.widthStations !== null;
  const waistStation = pair.ski.waistStation ?? pair.ski.contactLength / 2;
  const middle = place.y(0);

  const named = (end: End, widthMm: number) =>
    t('shape.width', { end, width: { quantity: 'widthMm', value: widthMm } });
  const grip = (field: WidthField, end: End, widthMm: number, station: number, limits: [number, number]) => (
    <Handle
      key={field}
      label={t('shape.widthOf', { end, name: pair.name })}
      measure="widthMm"
      value={widthMm}
      min={limits[0]}
      max={limits[1]}
      step={0.5}
      along="y"
      x={place.x(station)}
      y={place.y((widthMm * MM) / 2)}
      invert={px => (2 * (middle - px)) / perMetre / MM}
      disabled={locked}
      onInput={value =>
        changePair(pair.id, t('shape.widthStep', { end }), { [field]: value }, `${pair.id} ${field}`)
      }
    />
  );
  return (
    <g>
      {grip('tailWidthMm', 'tail', tail, 0, [waist + 1, 160])}
      {grip('waistWidthMm', 'waist', waist, waistStation, [40, Math.min(tip, tail) - 1])}
      {grip('tipWidthMm', 'tip', tip, pair.ski.contactLength, [waist + 1, 180])}
      <Handle
        label={t('shape.waistStationOf', { name: pair.name })}
        measure="stationMm"
        value={waistStation / MM}
        min={Math.round(contactLengthMm * 0.3)}
        max={Math.round(contactLengthMm * 0.7)}
        step={5}
        along="x"
        x={place.x(waistStation)}
        y={place.y((-waist * MM) / 2)}
        invert={px => (waistStation + (px - place.x(waistStation)) / along) / MM}
        disabled={locked}
        onInput={value =>
          changePair(
            pair.id,
            t('shape.waistStation'),
            { waistFromTailMm: value },
            `${pair.id} waistFromTailMm`,
          )
        }
      />
      <WidthLabel
        x={place.x(waistStation)}
        y={place.y((waist * MM) / 2) - 37}
        anchor="middle"
        text={named('waist', waist)}
      />
      <WidthLabel
        x={place.x(waistStation)}
        y={place.y((-waist * MM) / 2) + 4}
        anchor="middle"
        text={t(pair.ski.waistStation === null ? 'shape.waistTakenMidway' : 'shape.waistAt', {
          at: { quantity: 'station', value: waistStation },
        })}
      />
      <WidthLabel
        x={place.x(0) - 10}
        y={place.y((-tail * MM) / 2)}
        anchor="start"
        text={named('tail', tail)}
      />
      <WidthLabel
        x={place.x(pair.ski.contactLength) + 10}
        y={place.y((-tip * MM) / 2)}
        anchor="end"
        text={named('tip', tip)}
      />
      <Measured pair={pair} place={place} />
    </g>
  );
}

/** Stands clear of the circle's line: tip and tail under the lower edge. Part of the picture, unlike the grips. */
function WidthLabel(props: {
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
  text: string;
}): JSX.Element {
  return (
    <text class="width-label halo" x={props.x} y={props.y + 17} text-anchor={props.anchor}>
      {props.text}
    </text>
  );
}

/** Measured stations as points on the edge; they set the outline, so the grips are locked. */
function Measured({ pair, place }: { pair: ChosenPair; place: Placing }): JSX.Element | null {
  if (!pair.ski.widthStations) return null;
  return (
    <g>
      {pair.ski.widthStations.map(({ x, width }) => (
        <circle
          key={x}
          cx={place.x(x)}
          cy={place.y(width / 2)}
          r={3}
          fill="var(--surface)"
          stroke={pair.mark.colour}
          stroke-width={1.5}
        />
      ))}
    </g>
  );
}
