import type { JSX } from 'preact';
import type { RankedPair } from '../../../core/course/index.ts';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import {
  checkOf,
  findQuickLine,
  leftOut,
  quickLineOf,
  ranking,
  type Scope,
  scope,
} from '../../answers/index.ts';
import { Empty, PairBadge, Segments } from '../../kit/index.ts';
import { VerdictMark } from '../../rules/index.ts';
import {
  activate,
  type ChosenPair,
  choose,
  chosenPairs,
  course,
  edit,
  editWithoutUndo,
  inWords,
  letterFree,
  project,
  report,
  view,
} from '../../state/index.ts';
import { QuickestRuns } from './quickest-runs.tsx';
import { Standing } from './standing.tsx';

/** A long rack is shown from the front; the CSV holds all of it. */
const MOST_ROWS = 200;

/** Pair by pair, best first. */
export function PairsSheet(): JSX.Element {
  const answer = ranking.value.value;
  return (
    <>
      <div class="set-head">
        <Segments
          label="Rank"
          value={scope.value}
          options={[
            { value: 'chosen', label: 'the chosen pairs' },
            {
              value: 'rack',
              label: `the rack’s ${course.value.discipline === 'SL' ? 'slalom' : 'giant slalom'} pairs`,
            },
          ]}
          onInput={value => {
            scope.value = value as Scope;
          }}
        />
        {scope.value === 'rack' && leftOut.value > 0 && (
          <span class="reading-hint">{leftOut.value} of other disciplines left out</span>
        )}
      </div>
      <Standing />
      {answer ? (
        <div class={ranking.value.running ? 'plain-scroll stale' : 'plain-scroll'}>
          <table class="plain-table">
            <caption class="sr-only">Pairs on this set, best first</caption>
            <thead>
              <tr>
                <th scope="col">
                  <span class="sr-only">Place</span>
                </th>
                <th scope="col">Pair</th>
                <th scope="col" class="number">
                  Needed edge
                </th>
                <th scope="col" class="number">
                  Least hold
                </th>
                <th scope="col" class="number">
                  Speed
                </th>
                <th scope="col" class="number">
                  Time
                </th>
                <th scope="col">Rule check</th>
              </tr>
            </thead>
            <tbody>
              {answer.ranking.pairs.slice(0, MOST_ROWS).map((ranked, place) => (
                <Row
                  key={answer.pairs[ranked.index].id}
                  id={answer.pairs[ranked.index].id}
                  ranked={ranked}
                  place={place}
                  bent={answer.pairs[ranked.index].bent}
                />
              ))}
            </tbody>
          </table>
        </div>
      ) : (
        chosenPairs.value.length === 0 &&
        scope.value === 'chosen' && (
          <Empty>
            <p>Choose up to four pairs in the rack, or rank all that fit.</p>
          </Empty>
        )
      )}
      {answer && scope.value === 'chosen' && <QuickestRuns />}
    </>
  );
}

function Row(props: { id: string; ranked: RankedPair; place: number; bent: boolean }): JSX.Element | null {
  const { id, ranked, place, bent } = props;
  const entry = project.value.rack.find(each => each.id === id);
  if (!entry) return null;
  const chosen = chosenPairs.value.find(each => each.id === id);
  const { system } = view.value;
  const text = (value: number, measure: MeasureName, decimals: number) =>
    formatQuantity(value, measure, { system, decimals }).text;
  const check = checkOf(entry.pair, course.value.discipline);
  return (
    <>
      <tr class={chosen?.active ? 'pair-row active' : 'pair-row'}>
        <td class="number">{place + 1}.</td>
        <th scope="row">
          <button
            type="button"
            class="bare pair-name"
            title={chosen ? 'Make it the active pair' : 'Choose it'}
            onClick={() => take(id, chosen, entry.pair.name)}
          >
            {chosen && <PairBadge mark={chosen.mark} />} {entry.pair.name}
          </button>
        </th>
        <td class="number">
          {ranked.neededEdge === null ? 'beyond 89°' : text(ranked.neededEdge, 'angle', 0)}
        </td>
        <td class="number">{text(ranked.minHold, 'angle', 1)}</td>
        <td class="number">{text(ranked.report.averageSpeed, 'speed', 1)}</td>
        <td class="number">{ranked.report.seconds.toFixed(2)} s</td>
        <td>
          <VerdictMark verdict={check.verdict} />
        </td>
      </tr>
      <tr class="pair-words">
        <td />
        <td colSpan={6}>
          {inWords(ranked.verdict)}; {bent ? 'bent ski' : 'cosine rule'}
          {entry.pair.discipline && entry.pair.discipline !== course.value.discipline && (
            <strong> · stated for {entry.pair.discipline}</strong>
          )}
          {chosen && <QuickLineOf pair={chosen} carved={ranked.report.seconds} />}
        </td>
      </tr>
    </>
  );
}

function take(id: string, chosen: ChosenPair | undefined, name: string): void {
  if (chosen) editWithoutUndo(activate(id));
  else if (letterFree(project.value)) edit(`Choose ${name}`, choose(id));
  else report('All four letters are in use; let a pair go in the rack first.', 'error');
}

function QuickLineOf({ pair, carved }: { pair: ChosenPair; carved: number }): JSX.Element {
  const found = quickLineOf(pair.id);
  if (found?.line) {
    const { seconds, heldBackBy } = found.line;
    return (
      <span>
        {' '}
        · quick line {seconds.toFixed(2)} s
        {course.value.keepSpeed
          ? ', running free'
          : `, ${Math.abs(carved - seconds).toFixed(2)} s ${seconds < carved ? 'quicker' : 'slower'}`}
        {heldBackBy.length > 0 && ` (held back by ${heldBackBy.join(', ')})`}
      </span>
    );
  }
  if (found?.reason) return <span> · no quick line: {found.reason}</span>;
  return (
    <>
      {' · '}
      <button
        type="button"
        class="bare row-link"
        aria-label={`find its quick line: ${pair.name}`}
        onClick={() => findQuickLine(pair.id)}
      >
        find its quick line
      </button>
    </>
  );
}
