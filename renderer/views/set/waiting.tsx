import type { JSX } from 'preact';
import { decimal } from '../../../core/units/index.ts';
import { enteredNow, firstTimes, retrySetRuns, scope, setRuns, turnModel } from '../../answers/index.ts';
import { chosenPairs, course, inWords, project, t } from '../../state/index.ts';

/** What keeps the runs from being there, how far they have come, what is known so far, and what is left out. */
export function Waiting(): JSX.Element | null {
  const { waiting, progress, without, pairs } = enteredNow.value;
  const { error, running, stopped, value } = setRuns.value;
  const lines: (string | JSX.Element)[] = [];
  if (waiting > 0) {
    lines.push(
      <>
        {t('set.bending', { count: waiting, share: decimal(progress * 100, 0) })}{' '}
        <button
          type="button"
          class="bare row-link"
          onClick={() => {
            turnModel.value = 'cosine';
          }}
        >
          {t('set.cosineInstead')}
        </button>
      </>,
    );
  } else if (running) {
    const share = setRuns.value.progress;
    lines.push(share === null ? t('set.timingBegins') : t('set.timing', { share: decimal(share * 100, 0) }));
  }
  if (running) lines.push(...firstWords());
  if (error) lines.push(error);
  if (value?.fault) lines.push(inWords(value.fault));
  if (error || stopped) {
    lines.push(
      <>
        {stopped && `${t('set.stopped')} `}
        <button type="button" class="bare row-link" onClick={retrySetRuns}>
          {t('set.timeAgain')}
        </button>
      </>,
    );
  }
  if (without.length > 0) lines.push(t('set.withoutSidecut', { names: without }));
  if (waiting === 0 && pairs.length === 0 && scope.value !== 'chosen') lines.push(t('set.noneFits'));
  if (course.value.gates.length < 2 && value === null) lines.push(t('set.twoGatesNeeded'));
  if (lines.length === 0) return null;
  return (
    <div class={error || value?.fault ? 'problem' : 'reading-hint'} role="status">
      {lines.map((line, i) => (
        <p key={i}>{line}</p>
      ))}
    </div>
  );
}

/** First times, before pairs were begun from each other's runs: they may still fall by some hundredths. */
function firstWords(): string[] {
  const found = firstTimes.value;
  if (!found || found.length === 0) return [];
  const names = new Map(project.value.rack.map(({ id, pair }) => [id, pair.name]));
  const letter = (id: string) => chosenPairs.value.find(each => each.id === id)?.mark.letter;
  const times = found.map(({ id, seconds }) =>
    t('set.firstTime', { name: letter(id) ?? names.get(id) ?? '', seconds: decimal(seconds, 2) }),
  );
  return [t('set.firstTimes', { times })];
}
