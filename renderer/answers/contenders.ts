import { computed, type ReadonlySignal } from '@preact/signals';
import { inSi } from '../../core/conditions/index.ts';
import type { Sentence } from '../../core/language/index.ts';
import type { Pair } from '../../core/pair/index.ts';
import { editionText } from '../../core/rules/index.ts';
import type { TurnBasis } from '../../core/run/index.ts';
import { chosenPairs, conditions, course, perPair, project, ski, t } from '../state/index.ts';
import type { SetPair } from './jobs/set-jobs.ts';
import { type TableState, tableOf } from './radius-tables.ts';
import { checkOf } from './rule-check.ts';
import { scope, scopeOwner, turnModel } from './set-question.ts';
import { radiusOf } from './sidecut.ts';

export interface Contender {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
}

/** Chosen pairs, the same list while neither the choice nor a pair changed. */
const chosen = computed<readonly Contender[]>(() =>
  chosenPairs.value.map(({ id, name, pair }) => ({ id, name, pair })),
);

/**
 * Pairs of the whole rack, or of one owner, that fit the set's discipline. A pair that states none is let in; super-G or
 * downhill pairs would win every giant slalom by the cosine rule and are not what is asked.
 */
const fitting = computed<readonly Contender[]>(() =>
  project.value.rack
    .filter(({ pair }) => pair.discipline === undefined || pair.discipline === course.value.discipline)
    .filter(({ pair }) => scope.value !== 'owner' || pair.owner === scopeOwner.value)
    .map(({ id, pair }) => ({ id, name: pair.name, pair })),
);

export const leftOut = computed(() => project.value.rack.length - fitting.value.length);

/** A pair's tables by snow, held here so that a rack larger than what is kept does not go round in circles. */
const tablesOfPair = perPair(() => new Map<number, ReadonlySignal<TableState>>());

function tableFor(pair: Pair, hardness: number): TableState {
  const known = tablesOfPair(pair);
  let state = known.get(hardness);
  if (!state) {
    known.clear();
    state = tableOf(pair, hardness);
    known.set(hardness, state);
  }
  return state.value;
}

export interface Entered {
  /** Pairs whose way of turning is known. */
  readonly pairs: readonly SetPair[];
  /** Pairs still being bent, and how far they have come altogether, 0–1. */
  readonly waiting: number;
  readonly progress: number;
  /** Pairs by the cosine rule although the bent ski was asked for, and why. */
  readonly byCosine: readonly { readonly name: string; readonly why: string }[];
  /** Pairs that cannot be entered. */
  readonly without: readonly string[];
}

/** Rules of the set's discipline that a pair fails; one that is stated for no discipline is checked all the same. */
function failedRules(pair: Pair): Sentence[] {
  const check = checkOf(pair, course.value.discipline);
  if (check.verdict !== 'fails') return [];
  return check.items.filter(({ verdict }) => verdict === 'fails').map(({ rule }) => editionText(rule));
}

const entered = (list: ReadonlySignal<readonly Contender[]>) =>
  computed<Entered>(() => {
    const { hardness } = inSi(conditions.value, ['hardnessNPerMm3']);
    const pairs: SetPair[] = [];
    const byCosine: { name: string; why: string }[] = [];
    const without: string[] = [];
    let waiting = 0;
    let done = 0;
    for (const { id, name, pair } of list.value) {
      const enter = (turn: TurnBasis) => pairs.push({ id, pair, turn, failedRules: failedRules(pair) });
      const radius = radiusOf(pair);
      const state = turnModel.value === 'bent' ? tableFor(pair, hardness) : null;
      if (state?.table) enter({ table: state.table });
      else if (state && !state.failure) {
        waiting += 1;
        done += state.progress ?? 0;
        continue;
      } else if (radius === null) without.push(name);
      else {
        enter({ sidecutRadius: radius, press: { contactLength: ski(pair).contactLength, hardness } });
        if (state)
          byCosine.push({ name, why: state.missing ? t('answers.statesNoStiffness') : state.failure! });
      }
      done += 1;
    }
    return { pairs, waiting, progress: list.value.length ? done / list.value.length : 1, byCosine, without };
  });

export const enteredChosen = entered(chosen);
export const enteredRack = entered(fitting);
