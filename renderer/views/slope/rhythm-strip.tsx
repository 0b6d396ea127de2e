import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { leadRun, runs } from '../../answers/index.ts';
import { PairBadge } from '../../kit/index.ts';
import { t } from '../../state/index.ts';
import { limitInline, mostWorth } from './limit-words.ts';

/** The answer of a rhythm in one line: seconds a gate of each pair, and what holds the lead back most. */
export function RhythmStrip(): JSX.Element {
  const lead = leadRun.value?.rhythm;
  const first = lead && mostWorth(lead.limits)[0];
  return (
    <p class="rhythm-strip" role="status">
      {runs.value.runs.map(
        ({ pair, rhythm }) =>
          rhythm && (
            <span key={pair.id}>
              <PairBadge mark={pair.mark} />{' '}
              <b>{formatQuantity(rhythm.secondsPerGate, 'time', { decimals: 3 }).text}</b>{' '}
              {t('slope.aGate', { speed: { quantity: 'speed', value: rhythm.meanSpeed } })}
            </span>
          ),
      )}
      {first && <span>{t('slope.heldBackBy', { limit: limitInline(first.by) })}</span>}
    </p>
  );
}
