import type { JSX } from 'preact';
import { DEGREE, decimal, formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import {
  checkOf,
  estimated,
  leftOut,
  type QuickestPair,
  type Scope,
  scope,
  scopeOwner,
  setRuns,
} from '../../answers/index.ts';
import { exportTable } from '../../files/index.ts';
import { Empty, PairBadge, Segments } from '../../kit/index.ts';
import { printStart } from '../../print/index.ts';
import { VerdictMark } from '../../rules/index.ts';
import {
  activate,
  type ChosenPair,
  choose,
  chosenPairs,
  course,
  edit,
  editWithoutUndo,
  fileStem,
  inWords,
  letterFree,
  project,
  report,
  t,
  view,
} from '../../state/index.ts';
import { Waiting } from './waiting.tsx';

/** A long rack is shown from the front; the CSV holds all of it. */
const MOST_ROWS = 200;

/** Pair by pair, the quickest first. */
export function PairsSheet(): JSX.Element {
  const answer = setRuns.value.value;
  const owner = scopeOwner.value;
  const none = chosenPairs.value.length === 0 && scope.value === 'chosen';
  return (
    <>
      <div class="set-head">
        <Segments
          label={t('set.whose')}
          value={scope.value}
          options={[
            { value: 'chosen', label: t('set.scope.chosen') },
            ...(owner ? [{ value: 'owner' as const, label: t('set.scope.owner', { owner }) }] : []),
            {
              value: 'rack',
              label: t('set.scope.rack', { discipline: { key: `discipline.${course.value.discipline}` } }),
            },
          ]}
          onInput={value => {
            scope.value = value as Scope;
          }}
        />
        {scope.value !== 'chosen' && leftOut.value > 0 && (
          <span class="reading-hint">{t('set.leftOut', { count: leftOut.value })}</span>
        )}
        {answer && (
          <button type="button" class="bare row-link" onClick={() => void exportTable(csvName(), rows())}>
            {t('set.saveTable')}
          </button>
        )}
        {answer && answer.pairs.length > 0 && (
          <button type="button" class="bare row-link" onClick={() => void printStart()}>
            {t('set.startSheet')}
          </button>
        )}
      </div>
      <Waiting />
      {answer && (
        <div class={estimated.value || setRuns.value.running ? 'plain-scroll stale' : 'plain-scroll'}>
          <table class="plain-table">
            <caption class="sr-only">{t('set.quickestCaption')}</caption>
            <thead>
              <tr>
                <th scope="col">
                  <span class="sr-only">{t('set.place')}</span>
                </th>
                <th scope="col">{t('set.pair')}</th>
                {COLUMNS.map(key => (
                  <th scope="col" class="number" key={key}>
                    {t(key)}
                  </th>
                ))}
                <th scope="col">{t('set.ruleCheck')}</th>
              </tr>
            </thead>
            <tbody>
              {answer.pairs.slice(0, MOST_ROWS).map((pair, place) => (
                <Row key={pair.id} pair={pair} place={place} />
              ))}
              {answer.untimed.map(({ id, why }) => (
                <Without key={id} id={id} why={inWords(why)} />
              ))}
              {answer.byRhythmAlone.slice(0, MOST_ROWS).map(({ id, secondsPerGate }) => (
                <Without
                  key={id}
                  id={id}
                  why={
                    secondsPerGate === null
                      ? t('line.noPaceKept')
                      : t('set.byRhythm', { seconds: decimal(secondsPerGate, 3) })
                  }
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {none && (
        <Empty>
          <p>{t('set.choosePairs')}</p>
        </Empty>
      )}
    </>
  );
}

const COLUMNS = [
  'set.time',
  'set.gap',
  'set.peakEdge',
  'set.greatestLoad',
  'set.scraping',
  'set.legWork',
] as const;

const nameOf = (id: string) => project.value.rack.find(entry => entry.id === id)?.pair.name ?? '';

function Row({ pair, place }: { pair: QuickestPair; place: number }): JSX.Element | null {
  const entry = project.value.rack.find(each => each.id === pair.id);
  if (!entry) return null;
  const { system } = view.value;
  const text = (value: number, measure: MeasureName, decimals = 0) =>
    formatQuantity(value, measure, { system, decimals }).text;
  const seconds = (value: number, plusMinus: number) =>
    t('set.seconds', { seconds: decimal(value, 2), plusMinus: decimal(plusMinus, 2) });
  const now = estimated.value?.get(pair.id);
  const { discipline } = entry.pair;
  return (
    <tr class={isActive(pair.id) ? 'pair-row active' : 'pair-row'}>
      <td class="number">{place + 1}.</td>
      <th scope="row">
        <PairName id={pair.id} />
        {discipline && discipline !== course.value.discipline && (
          <span class="reading-note">
            {t('set.statedFor', { discipline: { key: `discipline.${discipline}` } })}
          </span>
        )}
      </th>
      <td class="number">
        {now === undefined
          ? seconds(pair.seconds, pair.secondsPlusMinus)
          : t('set.about', { seconds: decimal(now, 2) })}
      </td>
      <td class="number">{place === 0 ? '' : seconds(pair.gap, pair.gapPlusMinus)}</td>
      <td class="number">{text(pair.neededEdge, 'angle')}</td>
      <td class="number">{t('set.bodyWeights', { load: decimal(pair.greatestLoad, 1) })}</td>
      <td class="number">{text(pair.scrapeWork, 'work', 1)}</td>
      <td class="number">{text(pair.legWork, 'work', 1)}</td>
      <td>
        <VerdictMark verdict={checkOf(entry.pair, course.value.discipline).verdict} />
      </td>
    </tr>
  );
}

function Without({ id, why }: { id: string; why: string }): JSX.Element {
  return (
    <tr class="pair-words">
      <td />
      <th scope="row">
        <PairName id={id} />
      </th>
      <td colSpan={COLUMNS.length + 1}>{why}</td>
    </tr>
  );
}

const isActive = (id: string) => chosenPairs.value.find(each => each.id === id)?.active ?? false;

function PairName({ id }: { id: string }): JSX.Element {
  const chosen = chosenPairs.value.find(each => each.id === id);
  const name = nameOf(id);
  return (
    <button
      type="button"
      class="bare pair-name"
      title={t(chosen ? 'set.makeActive' : 'set.choose')}
      onClick={() => take(id, chosen, name)}
    >
      {chosen && <PairBadge mark={chosen.mark} />} {name}
    </button>
  );
}

function take(id: string, chosen: ChosenPair | undefined, name: string): void {
  if (chosen) editWithoutUndo(activate(id));
  else if (letterFree(project.value)) edit(t('set.chooseStep', { name }), choose(id));
  else report(t('set.lettersInUse'), 'error');
}

const csvName = () => `${fileStem(course.value.name || 'set')}-times.csv`;

/** Every pair that was timed, in SI and degrees as the headings say. */
function rows(): (string | number)[][] {
  const answer = setRuns.value.value;
  const degrees = (rad: number) => (rad / DEGREE).toFixed(1);
  return [
    [
      t('set.pair'),
      ...(['set.csv.time', 'set.csv.timePm', 'set.csv.gap', 'set.csv.gapPm'] as const).map(key => t(key)),
      ...(['set.csv.edge', 'set.csv.grip', 'set.csv.load', 'set.csv.scrape', 'set.csv.work'] as const).map(
        key => t(key),
      ),
    ],
    ...(answer?.pairs ?? []).map(pair => [
      nameOf(pair.id),
      pair.seconds.toFixed(3),
      pair.secondsPlusMinus.toFixed(3),
      pair.gap.toFixed(3),
      pair.gapPlusMinus.toFixed(3),
      degrees(pair.neededEdge),
      degrees(pair.leastGrip),
      pair.greatestLoad.toFixed(2),
      pair.scrapeWork.toFixed(0),
      pair.legWork.toFixed(0),
    ]),
  ];
}
