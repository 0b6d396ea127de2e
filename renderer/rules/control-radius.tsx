import type { JSX } from 'preact';
import {
  controlOf,
  controlRadius,
  controlReadings,
  type StatedReading,
  statedReading,
  statedStations,
} from '../../core/rules/index.ts';
import { formatQuantity } from '../../core/units/index.ts';
import { view } from '../state/index.ts';
import { ControlCell, type Measured, Where } from './control-cell.tsx';
import { controlRange, withReading } from './control-edits.ts';

export const NTH = ['1st', '2nd', '3rd'] as const;

interface Props {
  readonly of: Measured;
  /** One reading, or three where the first is under a limit. */
  readonly readings: readonly number[];
  readonly goesOn: boolean;
}

/** The lengths and widths a radius reading is made of, a column a reading, and the radius each gives. */
export function RadiusRows({ of, readings, goesOn }: Props): JSX.Element {
  const { control } = of.pair;
  const several = readings.length > 1;
  return (
    <>
      {controlReadings.map(({ field, symbol, meaning }) => (
        <tr key={field}>
          <th scope="row">
            <SymbolOf text={symbol} />, {meaning}
            <Where of={of} field={field} text={whereText(field, control)} />
          </th>
          {readings.map(nth => {
            const reading = statedReading(control, nth);
            return (
              <td key={nth} class="number">
                <ControlCell
                  of={of}
                  field={field}
                  label={`${symbol}, ${meaning}${several ? `, ${NTH[nth]} reading` : ''}`}
                  value={reading?.[field]}
                  range={controlRange(reading, field)}
                  nth={nth}
                  put={value => withReading(of.pair, nth, field, value)}
                />
              </td>
            );
          })}
        </tr>
      ))}
      {several && (
        <tr>
          <th scope="row">
            Radius of the reading
            <span class="where">
              {goesOn
                ? 'the first is under the limit: 1.015 × the mean of all three decides'
                : 'the first is enough here; those after it are not used'}
            </span>
          </th>
          {readings.map(nth => (
            <td key={nth} class="number">
              {radiusText(control, nth)}
            </td>
          ))}
        </tr>
      )}
    </>
  );
}

/** `L_TOT` as it is written by hand. */
function SymbolOf({ text }: { text: string }): JSX.Element {
  const [letter, index] = text.split('_');
  return (
    <>
      {letter}
      {index && <sub>{index}</sub>}
    </>
  );
}

function radiusText(control: Measured['pair']['control'], nth: number): string {
  const reading = controlOf(statedReading(control, nth));
  if (reading === null) return '–';
  return formatQuantity(controlRadius(reading), 'radius', { system: view.value.system, decimals: 2 }).text;
}

/** Where the tape or caliper goes for a reading. */
function whereText(field: keyof StatedReading, control: StatedReading | undefined): string {
  const { system } = view.value;
  const at = (mm: number) => formatQuantity(mm, 'lengthMm', { system }).text;
  const stations = statedStations(control);
  switch (field) {
    case 'developedLengthMm':
      return `tail to tip along the base, to ${system === 'metric' ? '1 mm' : '0.04 in'}`;
    case 'tailToWaistMm':
      return 'from the tail, along the base';
    case 'frontWidthMm':
      return stations ? `caliper at ${at(stations.frontMm)} from the tail` : 'once both lengths are given';
    case 'rearWidthMm':
      return stations ? `caliper at ${at(stations.rearMm)} from the tail` : 'once both lengths are given';
    case 'waistWidthMm':
      return control?.tailToWaistMm === undefined
        ? 'at the narrowest point'
        : `caliper at ${at(control.tailToWaistMm)} from the tail`;
  }
}
