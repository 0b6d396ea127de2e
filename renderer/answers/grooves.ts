import { effect, type ReadonlySignal, signal } from '@preact/signals';
import type { CarveFailure, Equilibrium } from '../../core/carve/index.ts';
import { type ChosenPair, chosenPairs } from '../state/index.ts';
import { asked } from './asked.ts';
import { carvingOf } from './radius-tables.ts';
import { doWork, Superseded } from './runner.ts';

export interface Grooves {
  /** By rack id, the last answer of every chosen pair that can be bent. */
  readonly answers: ReadonlyMap<string, Equilibrium | CarveFailure>;
  /** A newer question has been under way for a moment; the answers belong to the one before. */
  readonly running: boolean;
  /** The calculation itself broke. */
  readonly fault: string | null;
}

/** An answer that comes sooner is not waited for: nothing is redrawn to say that it is on its way. */
const MOMENT_MS = 200;

let stop: (() => void) | undefined;
let latest = 0;
let shown = 0;
let slow: ReturnType<typeof setTimeout> | undefined;

/**
 * The chosen pairs in their grooves under the present conditions, solved in the worker while anything on
 * screen reads this. Answers come all along a drag; the last one stands until the next is there.
 */
export const grooves: ReadonlySignal<Grooves> = (() => {
  const state = signal<Grooves>(
    { answers: new Map(), running: false, fault: null },
    {
      watched() {
        // A reader is being drawn at this moment, and must not be told of a change while it is.
        const started = { stopped: false, end: () => {} };
        queueMicrotask(() => {
          if (!started.stopped) started.end = effect(ask);
        });
        stop = () => {
          started.stopped = true;
          started.end();
        };
      },
      unwatched() {
        stop?.();
        stop = undefined;
      },
    },
  );

  function waiting() {
    slow ??= setTimeout(() => {
      state.value = { ...state.peek(), running: true };
    }, MOMENT_MS);
  }

  function answered(now: Grooves) {
    clearTimeout(slow);
    slow = undefined;
    state.value = now;
  }

  function ask() {
    const conditions = asked.value;
    const pairs = chosenPairs.value.filter(({ pair }) => carvingOf(pair).ok);
    latest += 1;
    const mine = latest;
    if (pairs.length === 0) {
      answered({ ...state.peek(), running: false });
      return;
    }
    waiting();
    const input = { pairs: pairs.map(({ pair }) => pair), conditions };
    doWork('grooves', 'equilibria', 'Solving the groove', input).then(
      found => {
        if (mine <= shown) return;
        shown = mine;
        const answers = new Map(pairs.map(({ id }, at) => [id, found[at]!]));
        answered({ answers, running: false, fault: null });
        if (mine !== latest) waiting();
      },
      (error: Error) => {
        if (mine !== latest) return;
        const fault = error instanceof Superseded ? null : error.message;
        answered({ ...state.peek(), running: false, fault });
      },
    );
  }
  return state;
})();

/** The pair's equilibrium, or null while there is none. */
export function grooveOf(pair: Pick<ChosenPair, 'id'>): Equilibrium | null {
  const answer = grooves.value.answers.get(pair.id);
  return answer?.ok ? answer : null;
}

/** Why a pair has no groove, in words; null when it has one or is about to. */
export function faultOf(pair: ChosenPair): string | null {
  const carving = carvingOf(pair.pair);
  if (!carving.ok) return carving.missing ? null : carving.reason;
  const { answers, fault } = grooves.value;
  const answer = answers.get(pair.id);
  return answer && !answer.ok ? answer.reason : fault;
}

/** The pair states no bending stiffness, so only the cosine rule can be said of it. */
export function unbendable(pair: Pick<ChosenPair, 'pair'>): boolean {
  const carving = carvingOf(pair.pair);
  return !carving.ok && carving.missing;
}
