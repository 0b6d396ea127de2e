import type { JSX } from 'preact';
import { runs, turnRadiusOf } from '../../answers/index.ts';
import { LimitKey, leadStretches } from './limit-bands.tsx';
import { measuredNear } from './measured.ts';
import { measuredShown } from './settings.ts';
import { TraceFigure } from './trace-figure.tsx';
import { TRACES } from './trace-list.ts';
import { trackRows } from './track-csv.ts';

/** The run over time, with what was measured in races where it was skied under nearly the same conditions. */
export function Traces(): JSX.Element {
  const shown = runs.value.runs;
  const near = shown[0] ? measuredNear(shown[0]) : [];
  const on = measuredShown.value && near.length > 0;
  return (
    <>
      <TraceFigure
        title="Over time"
        description="Speed, radius, edge angle, lean, load, leg, grip to spare and slip over time"
        note={on ? undefined : 'Right turns +. Hatched: slides.'}
        traces={TRACES}
        measured={on ? near.flatMap(each => each.bands) : []}
        limits={leadStretches.value}
        rows={() =>
          trackRows(
            shown.map(({ pair, plan, track }) => ({ name: pair.name, track, turn: turnRadiusOf(plan.turn) })),
          )
        }
        tools={
          near.length > 0 && (
            <label class="check">
              <input
                type="checkbox"
                checked={on}
                onChange={() => {
                  measuredShown.value = !measuredShown.value;
                }}
              />
              Measured in races
            </label>
          )
        }
      />
      <LimitKey />
      {on && (
        <p class="reading-hint">
          Bands are context, not a mark to reach: {[...new Set(near.map(each => each.words))].join('; ')}.
        </p>
      )}
    </>
  );
}
