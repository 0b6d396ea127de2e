import type { JSX } from 'preact';
import {
  fitRhythmicSet,
  neededEdgeWorking,
  setRadius,
  setRadiusWorking,
  setTurnAngle,
} from '../../../core/course/index.ts';
import { radiusOf } from '../../answers/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { PairReadings, Reading } from '../../kit/index.ts';
import { activePair, chosenPairs, conditions, t } from '../../state/index.ts';
import { makeRhythmic } from './course-sources.ts';

/** A rhythmic set from its numbers, and in closed form what it asks for. */
export function MakeSheet(): JSX.Element {
  const { gateSpacingM: s, gateOffsetM: o } = conditions.value;
  return (
    <div class="stage-split make-sheet">
      <section aria-label={t('set.rhythmic')}>
        <ConditionControl field="gates" />
        <ConditionControl field="gateSpacingM" />
        <ConditionControl field="gateOffsetM" />
        <button type="button" class="primary" onClick={makeRhythmic}>
          {t('set.setGates')}
        </button>
        <p class="reading-hint">{t('set.makeHint')}</p>
      </section>
      <section aria-label={t('set.closedForm')}>
        <Reading
          label={t('set.fillingRadius')}
          measure="radius"
          size="small"
          decimals={2}
          value={setRadius(s, o)}
          working={() => setRadiusWorking(s, o)}
        />
        <Reading label={t('set.turnedAtGate')} measure="angle" size="small" value={2 * setTurnAngle(s, o)} />
        {chosenPairs.value.length > 0 && (
          <PairReadings
            label={t('set.edgeByCosine')}
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
                    ? t('set.tooTight', { traverse: { quantity: 'radius', value: fit.traverse } })
                    : t('set.noSidecut'),
                working: radius === null ? undefined : () => neededEdgeWorking(s, o, radius) ?? [],
              };
            })}
          />
        )}
      </section>
    </div>
  );
}
