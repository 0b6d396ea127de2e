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
import { ConditionControl } from '../../controls/index.ts';
import { PairReadings, Reading } from '../../kit/index.ts';
import { activePair, chosenPairs, conditions, view } from '../../state/index.ts';
import { makeRhythmic } from './course-sources.ts';

/** A rhythmic set from its numbers, and in closed form what it asks for. */
export function MakeSheet(): JSX.Element {
  const { gateSpacingM: s, gateOffsetM: o } = conditions.value;
  return (
    <div class="stage-split make-sheet">
      <section aria-label="Rhythmic set">
        <ConditionControl field="gates" />
        <ConditionControl field="gateSpacingM" />
        <ConditionControl field="gateOffsetM" />
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
              const fills = fit?.kind === 'arcs';
              return {
                id: pair.id,
                mark: pair.mark,
                of: pair.name,
                value: fills ? fit.edgeAngle : null,
                why:
                  fit?.kind === 'arcs and traverses'
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
