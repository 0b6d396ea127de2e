import { computed } from '@preact/signals';
import { inSi } from '../../core/conditions/index.ts';
import { conditions, t } from '../state/index.ts';
import { answer } from './answer.ts';
import { boardAnswers, type Place } from './board.ts';
import { carvingOf } from './radius-tables.ts';
import { MOST_LOAD } from './request.ts';

function bendAt(place: Place) {
  const solved = answer('equilibria', {
    label: () => t('answers.boardBends'),
    question: () => {
      const shown = boardAnswers.value[place];
      if (!shown || !carvingOf(shown.ski.pair).ok) return null;
      return {
        pairs: [shown.ski.pair],
        conditions: {
          edgeAngle: shown.question.edgeAngle,
          load: Math.min(MOST_LOAD, shown.moment.outerLoad),
          ...inSi(conditions.value, ['hardnessNPerMm3', 'foreMm']),
        },
      };
    },
  });
  return computed(() => solved.value.value?.[0] ?? null);
}

/** The skis on the board in their grooves; null until they are solved. */
export const boardBends = [bendAt(0), bendAt(1)] as const;
