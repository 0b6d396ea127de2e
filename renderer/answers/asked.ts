import { computed, type ReadonlySignal } from '@preact/signals';
import { type CarveConditions, HARDNESS_SPAN } from '../../core/carve/index.ts';
import { conditions } from '../state/index.ts';

export const DEGREE = Math.PI / 180;
const MM = 1e-3;
const PER_MM3 = 1e9;

/** Limits of the controls, in the units people say. */
export const LEAST_EDGE = 2;
export const MOST_EDGE = 75;
export const LEAST_LOAD = 200;
export const MOST_LOAD = 4000;
export const { from: LEAST_HARDNESS, to: MOST_HARDNESS } = HARDNESS_SPAN;
export const MOST_FORE = 150;

const within = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value));

/** The question to the groove, SI, inside what the controls can ask. */
export const asked: ReadonlySignal<CarveConditions> = computed(() => {
  const { edgeDeg, loadN, hardnessNPerMm3, foreMm } = conditions.value;
  return {
    edgeAngle: within(edgeDeg, LEAST_EDGE, MOST_EDGE) * DEGREE,
    load: within(loadN, LEAST_LOAD, MOST_LOAD),
    hardness: within(hardnessNPerMm3, LEAST_HARDNESS, MOST_HARDNESS) * PER_MM3,
    fore: within(foreMm, -MOST_FORE, MOST_FORE) * MM,
  };
});

/** Parts of the question, for what must not be redrawn while the other parts are dragged. */
export const askedLoad = computed(() => asked.value.load);
export const askedHardness = computed(() => asked.value.hardness);
export const askedFore = computed(() => asked.value.fore ?? 0);
