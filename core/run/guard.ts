/**
 * Readings of the state that are watched for a change of sign while a run is followed.
 */

import { DISTANCE, DRIFT, HEADING, SPEED, X, Y } from './equations.ts';
import type { RunState, RunWatch } from './run-conditions.ts';
import type { RunEnd } from './track.ts';

export interface Guard {
  /** Changes sign from positive to negative when it happens. */
  value(t: number, state: Float64Array): number;
  /** What to do; returns the end of the run when it is one. */
  happen(t: number, state: Float64Array): RunEnd | undefined;
  /** A watch: a crossing counts, being past already does not. */
  readonly watch?: RunWatch;
}

/** The caller's watches as guards, each crossing seen once. */
export class Watches {
  private readonly last = new Map<RunWatch, { t: number; sign: number }>();

  constructor(
    private readonly watches: readonly RunWatch[],
    private readonly note: (name: string, t: number, state: Float64Array) => void,
  ) {}

  guards(t0: number, from: Float64Array): Guard[] {
    return this.watches.map(watch => this.guard(watch, t0, from));
  }

  /** A watch that has just been seen stands at zero give or take a rounding, which must not count again. */
  justSeen(guard: Guard, t: number): boolean {
    return guard.watch !== undefined && this.last.get(guard.watch)?.t === t;
  }

  private guard(watch: RunWatch, t0: number, from: Float64Array): Guard {
    const last = this.last.get(watch);
    const there = last?.t === t0 ? last.sign : Math.sign(watch.value(t0, seen(from)));
    const sign = watch.direction ?? (there > 0 ? -1 : 1);
    return {
      watch,
      value: (t, s) => -sign * watch.value(t, seen(s)),
      happen: (t, s) => {
        this.note(watch.name, t, s);
        this.last.set(watch, { t, sign });
        return watch.stop ? 'watch' : undefined;
      },
    };
  }
}

function seen(s: Float64Array): RunState {
  return {
    x: s[X],
    y: s[Y],
    heading: s[HEADING],
    speed: s[SPEED],
    drift: s[DRIFT],
    distance: s[DISTANCE],
  };
}
