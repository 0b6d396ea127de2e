import type { JSX } from 'preact';
import { changeView, type Question, t } from '../state/index.ts';
import { views } from '../views/index.ts';

/** One stroke each: what the question looks at. */
const GLYPHS: Record<Question, JSX.Element> = {
  shape: <path d="M5 3c4 6 4 12 0 18M19 3c-4 6-4 12 0 18" />,
  flex: <path d="M2 9c6 9 14 9 20 0M12 3v8M9.5 8.5L12 11l2.5-2.5" />,
  edge: <path d="M2 18h20M6 18L16 5M13 18a7 7 0 0 0-2.6-5.6" />,
  slope: <path d="M13 2c9 4-9 6-2 10s8 6-2 10" />,
  set: <path d="M5 21V12l6 2-6 2M15 13V3l6 2-6 2" />,
};

/** The five questions. Number keys 1 to 5 do the same. */
export function Rail({ current }: { current: string | null }): JSX.Element {
  return (
    <nav class="rail" aria-label={t('frame.questions')} id="rail">
      {views.map(({ id, question, heading }) => (
        <button
          key={question}
          type="button"
          class="rail-item"
          aria-current={id === current ? 'page' : undefined}
          title={t(heading)}
          onClick={() => changeView({ question })}
        >
          <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
            {GLYPHS[question]}
          </svg>
          <span>{t(`frame.question.${question}`)}</span>
        </button>
      ))}
    </nav>
  );
}
