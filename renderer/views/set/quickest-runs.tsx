import type { JSX } from 'preact';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import { canTimeQuickestRuns, quickestRuns, timeQuickestRuns } from '../../answers/index.ts';
import { PairBadge } from '../../kit/index.ts';
import { allInWords, chosenPairs, course, inWords, project, t, view } from '../../state/index.ts';

/** How fast the chosen pairs can be ridden through these gates, how far apart they are and how surely. */
export function QuickestRuns(): JSX.Element {
  const answer = quickestRuns.value;
  const { rack } = project.value;
  const nameOf = (id: string) => rack.find(entry => entry.id === id)?.pair.name ?? '';
  const markOf = (id: string) => chosenPairs.value.find(each => each.id === id)?.mark;
  const { system } = view.value;
  const text = (value: number, measure: MeasureName) =>
    formatQuantity(value, measure, { system, decimals: 0 }).text;
  const seconds = (value: number, plusMinus: number) =>
    t('set.seconds', { seconds: value.toFixed(2), plusMinus: plusMinus.toFixed(2) });
  return (
    <section class="quickest-runs">
      <h3>{t('set.quickestRuns')}</h3>
      {answer === null ? (
        <>
          <p class="reading-hint">{t('set.timesKeptDoNotRank')}</p>
          <button type="button" disabled={!canTimeQuickestRuns.value} onClick={() => void timeQuickestRuns()}>
            {t('set.timeQuickestRuns')}
          </button>
          <p class="reading-hint">
            {t('set.quickestHint', { speed: { quantity: 'speedKmh', value: course.value.speedKmh } })}
          </p>
        </>
      ) : (
        <>
          <p aria-live="polite">
            {answer.pick !== null && <strong>{t('set.picked', { name: nameOf(answer.pick) })} </strong>}
            {allInWords(answer.because)}
          </p>
          <div class="plain-scroll">
            <table class="plain-table">
              <caption class="sr-only">{t('set.quickestCaption')}</caption>
              <thead>
                <tr>
                  <th scope="col">{t('set.pair')}</th>
                  {(
                    ['set.time', 'set.gap', 'set.peakEdge', 'set.gripToSpare', 'set.greatestLoad'] as const
                  ).map(key => (
                    <th scope="col" class="number" key={key}>
                      {t(key)}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {answer.pairs.map(pair => {
                  const mark = markOf(pair.id);
                  return (
                    <tr key={pair.id}>
                      <th scope="row">
                        {mark && <PairBadge mark={mark} />} {nameOf(pair.id)}
                      </th>
                      <td class="number">{seconds(pair.seconds, pair.secondsPlusMinus)}</td>
                      <td class="number">{seconds(pair.gap, pair.gapPlusMinus)}</td>
                      <td class="number">{text(pair.neededEdge, 'angle')}</td>
                      <td class="number">{text(pair.leastGrip, 'angle')}</td>
                      <td class="number">{t('set.bodyWeights', { load: pair.greatestLoad.toFixed(1) })}</td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </div>
          {answer.untimed.map(({ id, why }) => (
            <p key={id}>
              {nameOf(id)}: {inWords(why)}
            </p>
          ))}
        </>
      )}
    </section>
  );
}
