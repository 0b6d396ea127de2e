import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Pair } from '../../../core/pair/index.ts';
import {
  controlOf,
  controlRadius,
  controlReadings,
  missingReadings,
  type StatedReading,
  statedReading,
  statedStations,
} from '../../../core/rules/index.ts';
import { formatQuantity, shownAs } from '../../../core/units/index.ts';
import { NumberCell } from '../../kit/index.ts';
import { changePair, view } from '../../state/index.ts';
import { controlRange, withReading } from './control-edits.ts';

const NTH = ['1st', '2nd', '3rd'] as const;

const HEIGHTS = [
  { field: 'standingHeightMm', label: 'Standing height' },
  { field: 'bootSoleHeightMm', label: 'Boot sole height' },
] as const;

/** What the controller measures on the pair itself; goes into the pair, as its other fields do. */
export function ControlInputs(props: {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
  readonly readOnly?: string | undefined;
  /** The first reading is under a limit, so that two more are to follow. */
  readonly goesOn: boolean;
}): JSX.Element {
  const { id, name, pair, readOnly } = props;
  const [problem, setProblem] = useState<{ readonly key: string; readonly text: string } | null>(null);
  const { system } = view.value;
  const { unit, factor } = shownAs('widthMm', system);
  const decimals = system === 'metric' ? 1 : 3;
  const steps = 10 ** decimals;
  const tidy = (value: number) => Number((value * factor).toFixed(decimals));
  const missing = missingReadings(pair.control).length;
  const repeated = pair.control?.repeats !== undefined;
  const readings = props.goesOn || repeated ? [0, 1, 2] : [0];
  const radii = readings.map(nth => controlOf(statedReading(pair.control, nth)));
  const complete = radii.filter(each => each !== null).length;
  const given = HEIGHTS.filter(({ field }) => pair[field] !== undefined).length;
  const cell = (
    label: string,
    key: string,
    value: number | undefined,
    [least, most]: readonly [number, number],
    put: (value: number | undefined) => Partial<Pair>,
    nth = 0,
  ) => (
    <NumberCell
      label={label}
      unit={unit}
      value={value === undefined ? null : tidy(value)}
      // Rounded inwards, so that what is accepted in inches is accepted by the pair too.
      min={Math.ceil(least * factor * steps - 1e-6) / steps}
      max={Math.floor(most * factor * steps + 1e-6) / steps}
      disabled={readOnly !== undefined}
      onProblem={text => setProblem(text === null ? null : { key, text })}
      onClear={() => changePair(id, `${label} of ${name}`, put(undefined), `${key} ${nth} ${id}`)}
      onInput={shown =>
        changePair(id, `${label} of ${name}`, put(Number((shown / factor).toFixed(3))), `${key} ${nth} ${id}`)
      }
    />
  );
  /** Where it is measured, or what is wrong with it, under its name: the cells beside it may be three. */
  const where = (key: string, text: string) => (
    <span class="where">
      {problem?.key === key ? (
        <span class="problem" role="alert">
          {problem.text}
        </span>
      ) : (
        text
      )}
    </span>
  );
  return (
    <details class="control-inputs">
      <summary>
        Measured by the control
        <span class="reading-note">
          {missing === 5 && given === 0 && !repeated
            ? 'nothing yet'
            : `${5 - missing} of 5 for the radius${repeated ? `, ${complete} of 3 readings complete` : ''}, ${given} of 2 heights`}
        </span>
      </summary>
      <div class="plain-scroll">
        <table class="plain-table">
          <caption class="sr-only">Control measurement of {name}</caption>
          <thead>
            <tr>
              <th scope="col">Reading</th>
              {readings.map(nth => (
                <th key={nth} scope="col" class="number">
                  {readings.length > 1 ? `${NTH[nth]}, ${unit}` : unit}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {controlReadings.map(({ field, symbol, meaning }) => (
              <tr key={field}>
                <th scope="row">
                  <SymbolOf text={symbol} />, {meaning}
                  {where(field, whereText(field, pair.control))}
                </th>
                {readings.map(nth => {
                  const reading = statedReading(pair.control, nth);
                  return (
                    <td key={nth} class="number">
                      {cell(
                        `${symbol}, ${meaning}${readings.length > 1 ? `, ${NTH[nth]} reading` : ''}`,
                        field,
                        reading?.[field],
                        controlRange(reading, field),
                        value => withReading(pair, nth, field, value),
                        nth,
                      )}
                    </td>
                  );
                })}
              </tr>
            ))}
            {readings.length > 1 && (
              <tr>
                <th scope="row">
                  Radius of the reading
                  <span class="where">
                    {props.goesOn
                      ? 'the first is under the limit: 1.015 × the mean of all three decides'
                      : 'the first is enough here; those after it are not used'}
                  </span>
                </th>
                {radii.map((reading, nth) => (
                  <td key={nth} class="number">
                    {reading === null ? '–' : radiusText(controlRadius(reading))}
                  </td>
                ))}
              </tr>
            )}
            {HEIGHTS.map(({ field, label }) => (
              <tr key={field}>
                <th scope="row">
                  {label}
                  {where(
                    field,
                    field === 'standingHeightMm'
                      ? 'base to the underside of the boot sole'
                      : 'underside of the sole to the foot bed',
                  )}
                </th>
                <td class="number">
                  {cell(label, field, pair[field], [10, 120], value => ({ [field]: value }))}
                </td>
                {readings.length > 1 && <td colSpan={2} />}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="reading-hint">
        {missing === 0
          ? 'Length, waist and radius in the table above are these readings.'
          : 'The five radius readings take the place of the catalogue widths once all are there.'}{' '}
        They stay with the pair; undo takes them back.
      </p>
    </details>
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

const radiusText = (metres: number): string =>
  formatQuantity(metres, 'radius', { system: view.value.system, decimals: 2 }).text;

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
