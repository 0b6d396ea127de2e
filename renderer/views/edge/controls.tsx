import type { JSX } from 'preact';
import { GRAVITY } from '../../../core/run/index.ts';
import { decimal } from '../../format/index.ts';
import { Quantity, Segments } from '../../kit/index.ts';
import { changeConditions, conditions, SNOWS, settle } from '../../state/index.ts';
import {
  LEAST_EDGE,
  LEAST_HARDNESS,
  LEAST_LOAD,
  MOST_EDGE,
  MOST_FORE,
  MOST_HARDNESS,
  MOST_LOAD,
} from './asked.ts';

/** Edge angle, load, fore-aft and snow: what is asked of the ski. */
export function Controls(): JSX.Element {
  const { edgeDeg, loadN, hardnessNPerMm3, foreMm, massKg } = conditions.value;
  const snow = SNOWS.find(each => each.hardnessNPerMm3 === hardnessNPerMm3);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw its own frame and legend
    <div class="edge-controls" role="group" aria-label="What is asked of the ski">
      <Quantity
        label="Edge angle"
        measure="angleDeg"
        value={edgeDeg}
        min={LEAST_EDGE}
        max={MOST_EDGE}
        step={1}
        onInput={value => changeConditions('Edge angle', { edgeDeg: value }, 'edgeDeg')}
      />
      <Quantity
        label="Load"
        measure="force"
        value={loadN}
        min={LEAST_LOAD}
        max={MOST_LOAD}
        step={50}
        note={`${decimal(loadN / (massKg * GRAVITY), 1)} × weight`}
        onInput={value => changeConditions('Load', { loadN: value }, 'loadN')}
      />
      <Quantity
        label="Fore-aft"
        measure="stationMm"
        value={foreMm}
        min={-MOST_FORE}
        max={MOST_FORE}
        step={5}
        note={foreMm === 0 ? 'over boot centre' : foreMm > 0 ? 'ahead of centre' : 'behind centre'}
        onInput={value => changeConditions('Fore-aft', { foreMm: value }, 'foreMm')}
      />
      <div class="snow-control">
        <Quantity
          label="Hardness"
          measure="hardnessNPerMm3"
          value={hardnessNPerMm3}
          min={LEAST_HARDNESS}
          max={MOST_HARDNESS}
          log
          onInput={value => changeConditions('Snow', { hardnessNPerMm3: value }, 'snow')}
        />
        <Segments
          label="Snow"
          labelHidden
          value={snow?.name ?? ''}
          options={SNOWS.map(({ name, hardnessNPerMm3 }) => ({
            value: name as string,
            label: name,
            title: `${hardnessNPerMm3} N/mm³`,
          }))}
          onInput={name => {
            const chosen = SNOWS.find(each => each.name === name)!;
            changeConditions('Snow', { hardnessNPerMm3: chosen.hardnessNPerMm3 });
            settle();
          }}
        />
      </div>
    </div>
  );
}
