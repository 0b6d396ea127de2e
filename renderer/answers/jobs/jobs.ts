import { LRUCache } from 'lru-cache';
import {
  buildRadiusTable,
  type CarveConditions,
  type CarveFailure,
  type CarvingSki,
  carvingSkiOf,
  type Equilibrium,
  grooveSolver,
  type RadiusTable,
} from '../../../core/carve/index.ts';
import { FieldError } from '../../../core/fault/index.ts';
import { type Pair, skiOf } from '../../../core/pair/index.ts';
import { flexJobs } from './flex-jobs.ts';
import { hillJobs } from './hill-jobs.ts';
import { setJobs } from './set-jobs.ts';

/** Told by a job on its way; 0–1, with what is known already where others wait for the whole. */
export type Progress = (share: number, soFar?: unknown) => void;

interface Solver {
  readonly solver: ReturnType<typeof grooveSolver>;
  /** The answer it gave last. */
  last?: Equilibrium | undefined;
}

/** Solvers of the pairs last asked about, by the text of the pair. */
const solvers = new LRUCache<string, Solver>({ max: 8 });

function solverOf(pair: Pair): Solver {
  const text = JSON.stringify(pair);
  const known = solvers.get(text) ?? { solver: grooveSolver(carvingOf(pair)) };
  solvers.set(text, known);
  return known;
}

function carvingOf(pair: Pair): CarvingSki {
  const carving = carvingSkiOf(skiOf(pair));
  // Nobody asks of a ski that cannot be bent: the page has looked before.
  if (!carving.ok) throw new FieldError(carving.reason);
  return carving.ski;
}

/**
 * Work that takes longer than about 8 ms. A job is a pure function of plain data: what goes in and out is
 * copied between threads, so it names numbers, typed arrays and pair files, never functions. To add one,
 * write it here; the client knows its types from `Jobs`. Say in `how-run.ts` on which thread it runs.
 */
export const jobs = {
  ...setJobs,
  ...flexJobs,
  ...hillJobs,

  /** One equilibrium a pair under the same conditions, begun from the pair's last. A few ms each. */
  equilibria({ pairs, conditions }: EquilibriaInput): (Equilibrium | CarveFailure)[] {
    return pairs.map(pair => {
      const known = solverOf(pair);
      const answer = known.solver.solve(conditions, { from: known.last });
      if (answer.ok) known.last = answer;
      return answer;
    });
  },

  /** Equilibria of one pair, each begun from the one before: put neighbouring conditions side by side. */
  groove(
    input: { readonly pair: Pair; readonly conditions: readonly CarveConditions[] },
    progress: Progress,
  ): (Equilibrium | CarveFailure)[] {
    const { solver } = solverOf(input.pair);
    let from: Equilibrium | undefined;
    return input.conditions.map((conditions, at) => {
      const answer = solver.solve(conditions, { from });
      if (answer.ok) from = answer;
      progress((at + 1) / input.conditions.length);
      return answer;
    });
  },

  /** Turn radius over edge angle and load of one pair on one snow. Half a second and up; ask `tableOf`. */
  radiusTable({ pair, hardness, fore }: RadiusTableInput, progress: Progress): RadiusTable | CarveFailure {
    const table = buildRadiusTable(carvingOf(pair), hardness, { fore, onProgress: progress });
    // Null where it was cancelled, and nothing cancels it here: a thread nobody waits for any more is ended.
    if (table === null) throw new Error('cancelled');
    return table;
  },
};

export type Jobs = typeof jobs;
export type JobName = keyof Jobs;
export type JobInput<N extends JobName> = Parameters<Jobs[N]>[0];
export type JobOutput<N extends JobName> = Awaited<ReturnType<Jobs[N]>>;

/** SI, radians. */
export interface EquilibriaInput {
  readonly pairs: readonly Pair[];
  readonly conditions: CarveConditions;
}

/** Hardness N/m³; fore m, 0 when absent. */
export interface RadiusTableInput {
  readonly pair: Pair;
  readonly hardness: number;
  readonly fore?: number;
}
