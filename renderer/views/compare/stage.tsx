import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Discipline } from '../../../core/rules/index.ts';
import { comparedOf } from '../../answers/index.ts';
import { exportTable } from '../../files/index.ts';
import { Empty, PairBadge } from '../../kit/index.ts';
import { RuleCheckPanel } from '../../rules/index.ts';
import { chosenPairs, t, view } from '../../state/index.ts';
import { BendCompared, StiffnessCompared } from './flex-charts.tsx';
import { NUMBER_ROWS, numberRows, shownNumber } from './numbers.ts';
import { OutlineRows } from './outlines.tsx';
import { turnAsked } from './turn-asked.ts';
import { NeededEdgeCompared, RadiusCompared } from './turn-charts.tsx';

export function CompareStage(): JSX.Element {
  const pairs = chosenPairs.value;
  const discipline = useSignal<Discipline | null>(null);
  if (pairs.length < 2) {
    return (
      <Empty>
        <p>{t('compare.empty', { count: pairs.length })}</p>
      </Empty>
    );
  }
  return (
    <div class="compare-page">
      <OutlineRows pairs={pairs} />
      <div class="compare-two">
        <RadiusCompared pairs={pairs} />
        <NeededEdgeCompared pairs={pairs} />
        <StiffnessCompared pairs={pairs} />
        <BendCompared pairs={pairs} />
      </div>
      <Numbers />
      <section class="compare-section">
        <h2>{t('common.ruleCheck')}</h2>
        <RuleCheckPanel
          pairs={pairs}
          discipline={discipline.value}
          onDiscipline={wanted => {
            discipline.value = wanted;
          }}
        />
      </section>
    </div>
  );
}

function Numbers(): JSX.Element {
  const pairs = chosenPairs.value;
  const { system } = view.value;
  const compared = pairs.map(pair => comparedOf(pair, turnAsked.value));
  return (
    <section class="compare-section">
      <header>
        <h2>{t('compare.inNumbers')}</h2>
        <button
          type="button"
          class="quiet"
          onClick={() => void exportTable(`${t('compare.fileName')}.csv`, numberRows(compared, system))}
        >
          {t('squad.saveCsv')}
        </button>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section class="plain-scroll" tabIndex={0} aria-label={t('compare.pairsInNumbers')}>
        <table class="plain-table">
          <caption class="sr-only">{t('compare.caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('compare.quantity')}</th>
              {pairs.map(pair => (
                <th key={pair.id} scope="col" class="number">
                  <PairBadge mark={pair.mark} /> {pair.name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {NUMBER_ROWS.map(({ label, measure, of }) => (
              <tr key={label}>
                <th scope="row">{t(label)}</th>
                {compared.map((each, at) => (
                  <td key={pairs[at]!.id} class="number">
                    {shownNumber(of(each), measure, system)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}
