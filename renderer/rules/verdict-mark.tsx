import type { JSX } from 'preact';
import type { LimitVerdict } from '../../core/rules/index.ts';
import { verdictText } from '../answers/index.ts';

const SHAPES: Record<LimitVerdict, JSX.Element> = {
  passes: (
    <>
      <circle cx="8" cy="8" r="6.5" />
      <path d="M5 8.3l2.1 2.1L11 6" />
    </>
  ),
  fails: (
    <>
      <rect class="solid" x="1.5" y="1.5" width="13" height="13" />
      <path class="cut" d="M5 5l6 6M11 5l-6 6" />
    </>
  ),
  'too close to call': (
    <>
      <path d="M8 1.2L14.8 8 8 14.8 1.2 8z" />
      <path d="M5 7c1-1 2-1 3 0s2 1 3 0M5 9.6c1-1 2-1 3 0s2 1 3 0" />
    </>
  ),
  'not given': (
    <>
      <circle class="dashed" cx="8" cy="8" r="6.5" />
      <path d="M5 8h6" />
    </>
  ),
};

/** A verdict by its shape and in words; colour only adds to it. */
export function VerdictMark({ verdict }: { verdict: LimitVerdict }): JSX.Element {
  return (
    <span class={`verdict-mark ${verdict.replaceAll(' ', '-')}`}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        {SHAPES[verdict]}
      </svg>
      {verdictText(verdict)}
    </span>
  );
}
