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
import { inWords, t, view } from '../state/index.ts';
import { ControlCell, type Measured, Where } from './control-cell.tsx';
import { controlRange, withReading } from './control-edits.ts';

export const NTH = ['rules.first', 'rules.second', 'rules.third'] as const;

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
            <SymbolOf text={symbol} />, {inWords(meaning)}
            <Where of={of} field={field} text={whereText(field, control)} />
          </th>
          {readings.map(nth => {
            const reading = statedReading(control, nth);
            return (
              <td key={nth} class="number">
                <ControlCell
                  of={of}
                  field={field}
                  label={
                    several
                      ? t('rules.cellNth', { symbol, meaning, nth: t(NTH[nth]!) })
                      : t('rules.cell', { symbol, meaning })
                  }
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
            {t('rules.radiusOfReading')}
            <span class="where">{t(goesOn ? 'rules.meanDecides' : 'rules.firstEnough')}</span>
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
  const caliperAt = (mm: number) => t('rules.caliperAt', { at: { quantity: 'lengthMm', value: mm } });
  const stations = statedStations(control);
  switch (field) {
    case 'developedLengthMm':
      return t('rules.developedLength', { resolution: system === 'metric' ? '1 mm' : '0.04 in' });
    case 'tailToWaistMm':
      return t('rules.tailToWaist');
    case 'frontWidthMm':
      return stations ? caliperAt(stations.frontMm) : t('rules.onceLengths');
    case 'rearWidthMm':
      return stations ? caliperAt(stations.rearMm) : t('rules.onceLengths');
    case 'waistWidthMm':
      return control?.tailToWaistMm === undefined ? t('rules.narrowest') : caliperAt(control.tailToWaistMm);
  }
}
