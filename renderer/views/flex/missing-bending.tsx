import type { JSX } from 'preact';
import { beamOf } from '../../answers/index.ts';
import { editPair } from '../../rack/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { t } from '../../state/index.ts';
import { STARTING, setStiffness } from './stiffness-edits.ts';

/** Stands in for the drawing of a pair that cannot be bent: which field to fill, or a figure to start from. */
export function MissingBending({ pair }: { pair: ChosenPair }): JSX.Element {
  const fault = beamOf(pair.pair).bendingFault;
  return (
    <section class="missing-bending" aria-label={t('edge.lacks', { name: pair.name })}>
      <p>
        {fault
          ? t('flex.stiffnessUnusable', { name: pair.name, why: fault })
          : t('flex.noStiffness', { name: pair.name, stiffness: STARTING.bending })}
      </p>
      {pair.readOnly === undefined ? (
        <p class="strip-actions">
          <button
            type="button"
            class="primary"
            onClick={() => setStiffness(pair.id, 'bending', { kind: 'uniform', newtonM2: STARTING.bending })}
          >
            {t('flex.startUniform')}
          </button>
          <button type="button" onClick={() => editPair(pair.id)}>
            {t('edge.openForm')}
          </button>
        </p>
      ) : (
        <p>{pair.readOnly}</p>
      )}
    </section>
  );
}
