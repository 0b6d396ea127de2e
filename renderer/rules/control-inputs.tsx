import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Pair } from '../../core/pair/index.ts';
import { controlOf, missingReadings, statedReading } from '../../core/rules/index.ts';
import { shownAs } from '../../core/units/index.ts';
import { t, view } from '../state/index.ts';
import type { Measured } from './control-cell.tsx';
import { HEIGHTS, HeightRows } from './control-heights.tsx';
import { NTH, RadiusRows } from './control-radius.tsx';

/** What the controller measures on the pair itself; goes into the pair, as its other fields do. */
export function ControlInputs(props: {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
  readonly readOnly?: string | undefined;
  /** The first reading is under a limit, so that two more are to follow. */
  readonly goesOn: boolean;
}): JSX.Element {
  const { goesOn, ...measured } = props;
  const { pair, name } = measured;
  const [problem, tell] = useState<Measured['problem']>(null);
  const of: Measured = { ...measured, problem, tell };
  const { unit } = shownAs('widthMm', view.value.system);
  const missing = missingReadings(pair.control).length;
  const repeated = pair.control?.repeats !== undefined;
  const readings = goesOn || repeated ? [0, 1, 2] : [0];
  const complete = readings.filter(nth => controlOf(statedReading(pair.control, nth)) !== null).length;
  const given = HEIGHTS.filter(({ field }) => pair[field] !== undefined).length;
  return (
    <details class="control-inputs">
      <summary>
        {t('rules.measured')}
        <span class="reading-note">
          {missing === 5 && given === 0 && !repeated
            ? t('rules.nothingYet')
            : t(repeated ? 'rules.measuredCountRepeated' : 'rules.measuredCount', {
                readings: 5 - missing,
                complete,
                heights: given,
              })}
        </span>
      </summary>
      <div class="plain-scroll">
        <table class="plain-table">
          <caption class="sr-only">{t('rules.measurementOf', { name })}</caption>
          <thead>
            <tr>
              <th scope="col">{t('rules.reading')}</th>
              {readings.map(nth => (
                <th key={nth} scope="col" class="number">
                  {readings.length > 1 ? t('rules.nthIn', { nth: t(NTH[nth]!), unit }) : unit}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <RadiusRows of={of} readings={readings} goesOn={goesOn} />
            <HeightRows of={of} columns={readings.length} />
          </tbody>
        </table>
      </div>
      <p class="reading-hint">
        {t(missing === 0 ? 'rules.readingsUsed' : 'rules.readingsToCome')} {t('rules.readingsStay')}
      </p>
    </details>
  );
}
