import { computed } from '@preact/signals';
import { fieldsOf, inSi } from '../../core/conditions/index.ts';
import { skierOf } from '../../core/skier/index.ts';
import { DEGREE } from '../../core/units/index.ts';
import { activePair, type ChosenPair, chosenPairs, conditions, slope } from '../state/index.ts';
import type { GroundPlan, ProgrammePlan } from './jobs/run-plan.ts';

/** Keeps its identity while something else is changed. */
const ghost = computed(() => slope.value.ghost);

/** The same object while nothing of the pair's own changed, so that turning a slider asks nothing anew. */
function steady(of: () => ChosenPair | null): () => ChosenPair | null {
  let last: ChosenPair | null = null;
  return () => {
    const next = of();
    const same = last?.id === next?.id && last?.pair === next?.pair && last?.mark === next?.mark;
    if (!same) last = next;
    return last;
  };
}

export const leadPair = computed(steady(() => activePair.value));

/** The pair that goes along. */
export const ghostPair = computed(
  steady(() => {
    const others = chosenPairs.value.filter(pair => pair.id !== activePair.value?.id);
    const wanted = ghost.value;
    if (wanted === null) return null;
    return others.find(pair => pair.id === wanted) ?? others[0] ?? null;
  }),
);

export const groundPlan = computed<GroundPlan>(() => {
  const { ground, groundFile, programme } = slope.value;
  // A rhythm is the pace that can be kept for ever, so its hill is even.
  if (programme !== 'rhythm') {
    if (ground === 'file' && groundFile) return { kind: ground, ...groundFile };
    if (ground === 'roller' || ground === 'steepening') return { kind: ground };
  }
  return { kind: 'even', angle: inSi(conditions.value, ['slopeDeg']).slope };
});

const ASKED = ['edgeDeg', 'clearanceM', ...fieldsOf('turns', 'gates', 'banked')] as const;

export const programmePlan = computed<ProgrammePlan>(() => {
  const { programme, programmeFile, shape, drawn } = slope.value;
  const said = conditions.value;
  const { edgeAngle, period, turns, traverse, ...gates } = inSi(said, ASKED);
  if (programme === 'rhythm') return { kind: programme, ...gates, gates: turns, skier: skierOf(said) };
  if (programme === 'drawn') {
    return { kind: programme, at: drawn.map(p => p.at), edges: drawn.map(p => p.deg * DEGREE) };
  }
  if (programme === 'file' && programmeFile) return { kind: programme, ...programmeFile };
  if (programme === 'banked') return { kind: programme, traverse, turns };
  return { kind: 'linked', peakEdge: edgeAngle, period, turns, shape };
});
