import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Pair } from '../../../core/pair/index.ts';
import {
  controlReadings,
  missingReadings,
  type StatedControl,
  statedStations,
} from '../../../core/rules/index.ts';
import { formatQuantity, shownAs } from '../../format/index.ts';
import { NumberCell } from '../../kit/index.ts';
import { changePair, view } from '../../state/index.ts';
import { controlRange, withReading } from './control-edits.ts';

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
}): JSX.Element {
  const { id, name, pair, readOnly } = props;
  const [problem, setProblem] = useState<{ readonly key: string; readonly text: string } | null>(null);
  const { system } = view.value;
  const { unit, factor } = shownAs('widthMm', system);
  const decimals = system === 'metric' ? 1 : 3;
  const steps = 10 ** decimals;
  const tidy = (value: number) => Number((value * factor).toFixed(decimals));
  const missing = missingReadings(pair.control).length;
  const given = HEIGHTS.filter(({ field }) => pair[field] !== undefined).length;
  const cell = (
    label: string,
    key: string,
    value: number | undefined,
    [least, most]: readonly [number, number],
    put: (value: number | undefined) => Partial<Pair>,
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
      onClear={() => changePair(id, `${label} of ${name}`, put(undefined), `${key} ${id}`)}
      onInput={shown =>
        changePair(id, `${label} of ${name}`, put(Number((shown / factor).toFixed(3))), `${key} ${id}`)
      }
    />
  );
  /** Where it is measured, or what is wrong with it, beside the cell it is about. */
  const where = (key: string, text: string) => (
    <td class="where">
      {problem?.key === key ? (
        <span class="problem" role="alert">
          {problem.text}
        </span>
      ) : (
        text
      )}
    </td>
  );
  return (
    <details class="control-inputs">
      <summary>
        Measured by the control
        <span class="reading-note">
          {missing === 5 && given === 0
            ? 'nothing yet'
            : `${5 - missing} of 5 radius readings, ${given} of 2 heights`}
        </span>
      </summary>
      <div class="plain-scroll">
        <table class="plain-table">
          <caption class="sr-only">Control measurement of {name}</caption>
          <thead>
            <tr>
              <th scope="col">Reading</th>
              <th scope="col" class="number">
                {unit}
              </th>
              <th scope="col">Where</th>
            </tr>
          </thead>
          <tbody>
            {controlReadings.map(({ field, symbol, meaning }) => (
              <tr key={field}>
                <th scope="row">
                  <SymbolOf text={symbol} />, {meaning}
                </th>
                <td class="number">
                  {cell(
                    `${symbol}, ${meaning}`,
                    field,
                    pair.control?.[field],
                    controlRange(pair.control, field),
                    value => withReading(pair, field, value),
                  )}
                </td>
                {where(field, whereText(field, pair.control))}
              </tr>
            ))}
            {HEIGHTS.map(({ field, label }) => (
              <tr key={field}>
                <th scope="row">{label}</th>
                <td class="number">
                  {cell(label, field, pair[field], [10, 120], value => ({ [field]: value }))}
                </td>
                {where(
                  field,
                  field === 'standingHeightMm'
                    ? 'base to the underside of the boot sole'
                    : 'underside of the sole to the foot bed',
                )}
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

/** Where the tape or caliper goes for a reading. */
function whereText(field: keyof StatedControl, control: StatedControl | undefined): string {
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
