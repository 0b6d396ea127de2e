import type { JSX } from 'preact';
import { beamOf } from '../../answers/index.ts';
import { editPair } from '../../rack/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { STARTING, setStiffness } from './stiffness-edits.ts';

/** Stands in for the drawing of a pair that cannot be bent: which field to fill, or a figure to start from. */
export function MissingBending({ pair }: { pair: ChosenPair }): JSX.Element {
  const fault = beamOf(pair.pair).bendingFault;
  return (
    <section class="missing-bending" aria-label={`What ${pair.name} lacks`}>
      <p>
        {fault ? (
          <>
            The bending stiffness of <strong>{pair.name}</strong> cannot be used. {fault}
          </>
        ) : (
          <>
            <strong>{pair.name}</strong> has no bending stiffness yet. Fill in <em>Bending stiffness EI</em>{' '}
            in its form, take bench readings, or start with {STARTING.bending} N·m² everywhere: a round figure
            to begin with, not a measurement.
          </>
        )}
      </p>
      {pair.readOnly === undefined ? (
        <p class="strip-actions">
          <button
            type="button"
            class="primary"
            onClick={() => setStiffness(pair.id, 'bending', { kind: 'uniform', newtonM2: STARTING.bending })}
          >
            Start with a uniform profile
          </button>
          <button type="button" onClick={() => editPair(pair.id)}>
            Open its form
          </button>
        </p>
      ) : (
        <p>{pair.readOnly}</p>
      )}
    </section>
  );
}
