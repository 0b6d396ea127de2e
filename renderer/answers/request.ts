import { computed, type ReadonlySignal } from '@preact/signals';
import type { CarveConditions } from '../../core/carve/index.ts';
import { fieldsOf, inSi, reachOf } from '../../core/conditions/index.ts';
import { conditions } from '../state/index.ts';

/** Over which edge angles (°) and loads (N) the charts go: those the controls can ask. */
export const [LEAST_EDGE, MOST_EDGE] = reachOf('edgeDeg');
export const [LEAST_LOAD, MOST_LOAD] = reachOf('loadN');

const ASKED = fieldsOf('edge', 'snow');

/** The question to the groove, SI, inside what the controls can ask. */
export const request: ReadonlySignal<CarveConditions> = computed(() => {
  const within = Object.fromEntries(
    ASKED.map(field => {
      const [least, most] = reachOf(field);
      return [field, Math.min(most, Math.max(least, conditions.value[field]))];
    }),
  );
  return inSi(within, ASKED);
});

/** Parts of the question, for what must not be redrawn while the other parts are dragged. */
export const askedLoad = computed(() => request.value.load);
export const askedHardness = computed(() => request.value.hardness);
export const askedFore = computed(() => request.value.fore ?? 0);
