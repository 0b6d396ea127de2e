import type { JSX } from 'preact';
import {
  fitRhythmicSet,
  neededEdgeWorking,
  setRadius,
  setRadiusWorking,
  setTurnAngle,
} from '../../../core/course/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { radiusOf } from '../../answers/index.ts';
import { PairReadings, Quantity, Reading } from '../../kit/index.ts';
import { activePair, changeConditions, chosenPairs, conditions, view } from '../../state/index.ts';
import { makeRhythmic } from './course-sources.ts';

/** A rhythmic set from its numbers, and in closed form what it asks for. */
export function MakeSheet(): JSX.Element {
  const { gates, gateSpacingM: s, gateOffsetM: o } = conditions.value;
  return (
    <div class="stage-split make-sheet">
      <section aria-label="Rhythmic set">
        <Quantity
          label="Gates"
          measure="count"
          value={gates}
          min={2}
          max={80}
          step={1}
          onInput={value => changeConditions('Gates', { gates: Math.round(value) }, 'gates')}
        />
        <Quantity
          label="Spacing, down the hill"
          measure="distance"
          value={s}
          min={4}
          max={60}
          step={0.5}
          onInput={value => changeConditions('Gate spacing', { gateSpacingM: value }, 'gateSpacingM')}
        />
        <Quantity
          label="Offset, across the hill"
          measure="distance"
          value={o}
          min={0.2}
          max={20}
          step={0.1}
          onInput={value => changeConditions('Gate offset', { gateOffsetM: value }, 'gateOffsetM')}
        />
        <button type="button" class="primary" onClick={makeRhythmic}>
          Set these gates
        </button>
        <p class="reading-hint">On the slope set at the right. Undo brings back the gates you had.</p>
      </section>
      <section aria-label="In closed form">
        <Reading
          label="Radius that fills the set"
          measure="radius"
          size="small"
          decimals={2}
          value={setRadius(s, o)}
          working={() => setRadiusWorking(s, o)}
        />
        <Reading label="Turned at each gate" measure="angle" size="small" value={2 * setTurnAngle(s, o)} />
        {chosenPairs.value.length > 0 && (
          <PairReadings
            label="Edge angle by the cosine rule"
            measure="angle"
            activeId={activePair.value?.id ?? null}
            rows={chosenPairs.value.map(pair => {
              const radius = radiusOf(pair.pair);
              const fit = radius === null ? null : fitRhythmicSet(s, o, radius);
              const fills = fit?.kind === 'arcs fill the set';
              return {
                id: pair.id,
                mark: pair.mark,
                of: pair.name,
                value: fills ? fit.edgeAngle : null,
                why:
                  fit?.kind === 'arcs joined by traverses'
                    ? `Turns tighter than the set even when flat: arcs with ${formatQuantity(fit.traverse, 'radius', { system: view.value.system }).text} of traverse between.`
                    : 'It has no sidecut.',
                working: radius === null ? undefined : () => neededEdgeWorking(s, o, radius) ?? [],
              };
            })}
          />
        )}
      </section>
    </div>
  );
}
