import type { JSX } from 'preact';
import { faultOf, unbendable } from '../../answers/index.ts';
import { editPair } from '../../rack/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { t } from '../../state/index.ts';

/** Says what keeps a pair from being bent into its groove, and what to do about it. */
export function MissingStiffness({ pair }: { pair: ChosenPair }): JSX.Element | null {
  const missing = unbendable(pair);
  const fault = faultOf(pair);
  if (!missing && fault === null) return null;
  return (
    <section class="missing-stiffness" aria-label={t('edge.lacks', { name: pair.name })} aria-live="polite">
      <p>
        {missing
          ? t('edge.noStiffness', { name: pair.name })
          : t('edge.notSolved', { name: pair.name, why: fault ?? '' })}
      </p>
      {missing && pair.readOnly === undefined && (
        <button type="button" onClick={() => editPair(pair.id)}>
          {t('edge.openForm')}
        </button>
      )}
    </section>
  );
}
