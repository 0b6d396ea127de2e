import { t } from '../../state/index.ts';
import './limit-bands.css';
import { computed } from '@preact/signals';
import type { JSX } from 'preact';
import { leadRun } from '../../answers/index.ts';
import { LIMITS, type Limit, limitName, limitReason, limitStretches, limitsMet } from './limit-words.ts';

/** Where which limit holds the lead back; empty where no rhythm is skied. */
export const leadStretches = computed(() => {
  const rhythm = leadRun.value?.rhythm;
  return rhythm ? limitStretches(rhythm.heldBackBy) : [];
});

/** How each limit's band is drawn: colour and pattern, so that neither is needed alone. */
const DRAWN: Readonly<Record<Limit, JSX.Element>> = {
  push: <rect width="8" height="8" />,
  'push rate': <path d="M-1,9L9,-1M-1,1L1,-1M7,9L9,7" />,
  'leg speed': <path d="M-1,-1L9,9M-1,7L1,9M7,-1L9,1" />,
  'leg length': <path d="M2,0V8M6,0V8" />,
  'edge angle': <path d="M0,2H8M0,6H8" />,
  'edge rate': <path d="M0,4H8M4,0V8" />,
  hold: <path d="M-1,9L9,-1M-1,-1L9,9" />,
  wall: <path d="M0,2H8M0,6H8M2,2V6M6,-2V2M6,6V10" />,
  angulation: <path d="M2,2h.01M6,6h.01" class="dots" />,
  drift: <path d="M0,2Q2,-1 4,2T8,2M0,6Q2,3 4,6T8,6" />,
};

const idOf = (scope: string, by: Limit) => `${scope}-limit-${by.replace(' ', '-')}`;
export const limitFill = (scope: string, by: Limit): string => `url(#${idOf(scope, by)})`;

/** The patterns of a drawing; `scope` keeps the ids of two drawings apart. */
export function LimitPatterns({ scope }: { readonly scope: string }): JSX.Element {
  return (
    <defs>
      {LIMITS.map(by => (
        <pattern
          key={by}
          id={idOf(scope, by)}
          class="limit-pattern"
          data-limit={by}
          width="8"
          height="8"
          patternUnits="userSpaceOnUse"
        >
          {DRAWN[by]}
        </pattern>
      ))}
    </defs>
  );
}

/** What the bands mean, for those that are seen. */
export function LimitKey(): JSX.Element | null {
  const met = limitsMet(leadStretches.value);
  const lead = leadRun.value;
  if (met.length === 0 || !lead) return null;
  return (
    <p class="limit-key">
      <span>{t('slope.whatHoldsBackAlong', { name: lead.pair.name })}</span>
      {met.map(by => (
        <span key={by} title={limitReason(by)}>
          <svg width="26" height="12" aria-hidden="true">
            <LimitPatterns scope={`key-${by.replace(' ', '-')}`} />
            <rect
              class="limit-band"
              width="26"
              height="12"
              fill={limitFill(`key-${by.replace(' ', '-')}`, by)}
            />
          </svg>{' '}
          {limitName(by)}
        </span>
      ))}
    </p>
  );
}
