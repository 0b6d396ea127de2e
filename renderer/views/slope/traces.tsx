import type { JSX } from 'preact';
import { runs, turnRadiusOf } from '../../answers/index.ts';
import { t } from '../../state/index.ts';
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
        title={t('slope.sheet.traces')}
        description={t('slope.tracesDescription')}
        note={on ? undefined : t('slope.tracesNote')}
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
              {t('slope.measuredInRaces')}
            </label>
          )
        }
      />
      <LimitKey />
      {on && (
        <p class="reading-hint">
          {t('slope.bandsAreContext', {
            measured: [...new Set(near.map(each => each.words))].map(words => t(words)).join('; '),
          })}
        </p>
      )}
    </>
  );
}
