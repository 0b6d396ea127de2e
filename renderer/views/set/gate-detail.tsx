import type { JSX } from 'preact';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import { chosenRanking } from '../../answers/index.ts';
import { Empty, PairBadge } from '../../kit/index.ts';
import { activePair, inWords, view } from '../../state/index.ts';
import { MODE_WORDS } from './gate-words.ts';
import { selectedGate, selectGate } from './set-state.ts';
import { Standing } from './standing.tsx';

/** The active pair at every gate. */
export function GateDetail(): JSX.Element {
  const active = activePair.value;
  const answer = chosenRanking.value.value;
  const ranked = answer?.ranking.pairs.find(each => answer.pairs[each.index].id === active?.id);
  if (!active || !ranked) {
    return active ? (
      <Standing />
    ) : (
      <Empty>
        <p>Choose a pair in the rack to follow it from gate to gate.</p>
      </Empty>
    );
  }
  const { system } = view.value;
  const text = (value: number, measure: MeasureName, decimals?: number) =>
    formatQuantity(value, measure, { system, decimals }).text;
  return (
    <>
      <div class="set-head">
        <PairBadge mark={active.mark} />
        <strong>{active.name}</strong>
        <span class="reading-hint">{inWords(ranked.verdict)}. Keys A to D take another pair.</span>
      </div>
      <div class="plain-scroll">
        <table class="plain-table">
          <caption class="sr-only">{active.name} gate by gate</caption>
          <thead>
            <tr>
              <th scope="col">Gate</th>
              <th scope="col" class="number">
                Radius
              </th>
              <th scope="col" class="number">
                Needed edge
              </th>
              <th scope="col" class="number">
                Ridden
              </th>
              <th scope="col" class="number">
                Lean
              </th>
              <th scope="col" class="number">
                Hold
              </th>
              <th scope="col" class="number">
                Load
              </th>
              <th scope="col" class="number">
                Speed
              </th>
              <th scope="col">How</th>
            </tr>
          </thead>
          <tbody>
            {ranked.report.gates.map((gate, at) => (
              <tr key={at} class={at === selectedGate.value ? 'picked' : undefined}>
                <th scope="row">
                  <button
                    type="button"
                    class="bare gate-pick"
                    aria-label={`Show gate ${gate.gate} in the drawing`}
                    onClick={() => selectGate(at)}
                  >
                    {gate.gate}
                  </button>
                </th>
                <td class="number">{text(gate.neededRadius, 'radius')}</td>
                <td class="number">
                  {gate.neededEdge === null ? 'none' : text(gate.neededEdge, 'angle', 1)}
                </td>
                <td class="number">{text(gate.edge, 'angle', 1)}</td>
                <td class="number">{text(gate.lean, 'angle', 1)}</td>
                <td class="number">{text(gate.hold, 'angle', 1)}</td>
                <td class="number">{text(gate.load, 'force')}</td>
                <td class="number">{text(gate.speed, 'speed')}</td>
                <td>
                  {MODE_WORDS[gate.mode]}
                  {gate.drift > 0 && ` ${text(gate.drift, 'angle', 0)}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="reading-hint">
        Load is on both skis. Hold below nought: the shelf gives way at the edge angle the line asks for.
      </p>
    </>
  );
}
