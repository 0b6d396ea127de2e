import type { JSX } from 'preact';
import { decimal } from '../../../core/units/index.ts';
import { enteredNow, ranking, scope, turnModel } from '../../answers/index.ts';

/** What keeps the ranking from being there, how far it has come, and what it leaves out. */
export function Standing(): JSX.Element | null {
  const { waiting, progress, without, pairs } = enteredNow.value;
  const { error } = ranking.value;
  const lines: (string | JSX.Element)[] = [];
  if (waiting > 0) {
    lines.push(
      <>
        Bending {waiting} {waiting === 1 ? 'pair' : 'pairs'} into the snow, {decimal(progress * 100, 0)} %.{' '}
        <button
          type="button"
          class="bare row-link"
          onClick={() => {
            turnModel.value = 'cosine';
          }}
        >
          Rank by the cosine rule instead
        </button>
      </>,
    );
  }
  if (error) lines.push(error);
  if (without.length > 0) lines.push(`Without a sidecut, so not ranked: ${without.join(', ')}.`);
  if (waiting === 0 && pairs.length === 0 && scope.value === 'rack') {
    lines.push('No pair of the rack fits the discipline of the set.');
  }
  if (lines.length === 0) return null;
  return (
    <div class={error ? 'problem' : 'reading-hint'} role="status">
      {lines.map((line, i) => (
        <p key={i}>{line}</p>
      ))}
    </div>
  );
}
