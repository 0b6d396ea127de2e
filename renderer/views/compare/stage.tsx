import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Discipline } from '../../../core/rules/index.ts';
import { comparedOf } from '../../answers/index.ts';
import { exportTable } from '../../files/index.ts';
import { Empty, PairBadge } from '../../kit/index.ts';
import { RuleCheckPanel } from '../../rules/index.ts';
import { chosenPairs, view } from '../../state/index.ts';
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
        <p>
          {pairs.length === 0 ? 'No pair is chosen.' : 'Only one pair is chosen.'} Tick two to four pairs in
          the rack to lay them side by side.
        </p>
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
        <h2>Rule check</h2>
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
        <h2>In numbers</h2>
        <button
          type="button"
          class="quiet"
          onClick={() => void exportTable('comparison.csv', numberRows(compared, system))}
        >
          Save as CSV
        </button>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section class="plain-scroll" tabIndex={0} aria-label="The pairs in numbers">
        <table class="plain-table">
          <caption class="sr-only">The chosen pairs in numbers, with standard uncertainties</caption>
          <thead>
            <tr>
              <th scope="col">Quantity</th>
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
                <th scope="row">{label}</th>
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
