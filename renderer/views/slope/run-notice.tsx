import { t } from '../../state/index.ts';
import './run-notice.css';
import type { JSX } from 'preact';
import { askAgain, runs } from '../../answers/index.ts';

/** Why there is no run, or no newer one, with another try where that may help. */
export function RunNotice(): JSX.Element | null {
  const { problem, again, working, runs: shown } = runs.value;
  if (!problem) {
    return working && shown.length === 0 ? (
      <p class="run-notice" role="status">
        {t('slope.solvingRun')}
      </p>
    ) : null;
  }
  return (
    <div class="run-notice problem" role="alert">
      <p>{problem}</p>
      {again && (
        <button type="button" onClick={askAgain}>
          {t('frame.tryAgain')}
        </button>
      )}
    </div>
  );
}
