import { computed, signal } from '@preact/signals';
import type { TurnShape } from '../../../core/run/index.ts';
import type { HillCamera } from '../../scene/index.ts';
import { activePair, type ChosenPair, chosenPairs, conditions } from '../../state/index.ts';
import type { GroundPlan, ProgrammePlan } from './run-plan.ts';

const RAD = Math.PI / 180;

export type GroundKind = GroundPlan['kind'];
export type ProgrammeKind = ProgrammePlan['kind'];
export type Sheet = 'traces' | 'programme' | 'energy' | 'coach';

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** One point of a programme drawn by hand: s and degrees, positive in right turns. */
export interface DrawnPoint {
  readonly at: number;
  readonly deg: number;
}

export const groundKind = signal<GroundKind>('even');
export const groundFile = signal<TextFile | null>(null);
export const programmeKind = signal<ProgrammeKind>('linked');
export const programmeFile = signal<TextFile | null>(null);
export const turnShape = signal<TurnShape>('sine');
export const traverseDeg = signal(60);
export const drawn = signal<readonly DrawnPoint[]>(
  [0, 42, 0, -48, 0, 52, 0, -30, 0].map((deg, i) => ({ at: i * 0.8, deg })),
);

/** How the hill is looked at. */
export const camera = signal<HillCamera>('follow');
export const sheet = signal<Sheet>('traces');
export const arrowsShown = signal(true);
export const measuredShown = signal(false);

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

/** The pair that goes along as a ghost: an id, null for none, undefined for the first that is not active. */
const wantedGhost = signal<string | null | undefined>(undefined);

export function chooseGhost(id: string | null): void {
  wantedGhost.value = id;
}

export const ghostPair = computed(
  steady(() => {
    const others = chosenPairs.value.filter(pair => pair.id !== activePair.value?.id);
    const wanted = wantedGhost.value;
    if (wanted === null) return null;
    return others.find(pair => pair.id === wanted) ?? others[0] ?? null;
  }),
);

export const groundPlan = computed<GroundPlan>(() => {
  const kind = groundKind.value;
  const file = groundFile.value;
  if (kind === 'file' && file) return { kind, ...file };
  if (kind === 'roller' || kind === 'steepening') return { kind };
  return { kind: 'even', angle: conditions.value.slopeDeg * RAD };
});

export const programmePlan = computed<ProgrammePlan>(() => {
  const kind = programmeKind.value;
  const { edgeDeg, periodS, turns } = conditions.value;
  const file = programmeFile.value;
  if (kind === 'drawn') {
    return { kind, at: drawn.value.map(p => p.at), edges: drawn.value.map(p => p.deg * RAD) };
  }
  if (kind === 'file' && file) return { kind, ...file };
  if (kind === 'banked') return { kind, traverse: traverseDeg.value * RAD, turns };
  return { kind: 'linked', peakEdge: edgeDeg * RAD, period: periodS, turns, shape: turnShape.value };
});
