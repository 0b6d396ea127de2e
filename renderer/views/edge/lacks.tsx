import type { JSX } from 'preact';
import { faultOf, unbendable } from '../../answers/index.ts';
import { editPair } from '../../rack/index.ts';
import type { ChosenPair } from '../../state/index.ts';

/** Says what keeps a pair from being bent into its groove, and what to do about it. */
export function Lacks({ pair }: { pair: ChosenPair }): JSX.Element | null {
  const missing = unbendable(pair);
  const fault = faultOf(pair);
  if (!missing && fault === null) return null;
  return (
    <section class="edge-lacks" aria-label={`What ${pair.name} lacks`} aria-live="polite">
      <p>
        {missing ? (
          <>
            <strong>{pair.name}</strong> has no bending stiffness yet: the cosine rule is all there is. Fill
            in <em>Bending stiffness EI</em> to bend it into its groove.
          </>
        ) : (
          <>
            <strong>{pair.name}</strong> could not be solved. {fault}
          </>
        )}
      </p>
      {missing && pair.readOnly === undefined && (
        <button type="button" onClick={() => editPair(pair.id)}>
          Open its form
        </button>
      )}
    </section>
  );
}
