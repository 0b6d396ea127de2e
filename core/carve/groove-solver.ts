import type { Sentence } from '../language/index.ts';
import type { CarveConditions, CarveFailure, CarvingSki, Equilibrium } from './groove.ts';
import { GrooveSearch, stepsSpent } from './groove-search.ts';
import type { Neighbour } from './neighbouring-start.ts';
import type { SnowLaw } from './snow-law.ts';
import { unsupportedReason } from './solvable.ts';
import { wedgeSnow } from './wedge-snow.ts';

/** What an answer is balanced to, of the load. */
const TOLERANCE = 1e-8;
/** Elements and balance of the coarse mesh on which long ways are gone: enough to tell one groove from another. */
const COARSE_ELEMENTS = 32;
const COARSE_TOLERANCE = 1e-3;

export interface GrooveSolverOptions {
  /** Beam elements along the contact length; 120 when absent, and twice as many then change R by under 0.2 %. */
  readonly elements?: number;
  /** What the edge is pressed into. */
  readonly law?: SnowLaw;
}

/** Solves one ski's equilibria; made once for a ski and reused. Not re-entrant. */
export interface GrooveSolver {
  /** Edge angle rad, load N, hardness N/m³, fore m. */
  solve(conditions: CarveConditions, start?: GrooveStart): Equilibrium | CarveFailure;
}

/** Where to begin. */
export interface GrooveStart {
  /** A neighbouring answer, or several with their shares. */
  readonly from?: Equilibrium | readonly Neighbour[];
  /**
   * Says that the neighbours lie so close on either side of the question that the groove between them is theirs:
   * it is then sought from them even where a second one may exist.
   */
  readonly sameGroove?: boolean;
}

/**
 * The equilibrium of a ski in its own groove, for one ski: mesh, stiffness and workspace are kept.
 *
 * Begins from neighbouring answers where there is one groove only. Where there may be two, the way to the right one
 * is gone on a coarse mesh and its answer corrected on the fine one: the way takes dozens of Newton steps, the
 * correction about four. What no way reaches is a failure, never an answer.
 */
export function grooveSolver(ski: CarvingSki, options: GrooveSolverOptions = {}): GrooveSolver {
  const law = options.law ?? wedgeSnow;
  const elements = options.elements ?? 120;
  const fine = new GrooveSearch(ski, elements, law, TOLERANCE);
  const coarse =
    elements > COARSE_ELEMENTS ? new GrooveSearch(ski, COARSE_ELEMENTS, law, COARSE_TOLERANCE) : null;

  function solve(
    conditions: CarveConditions,
    { from, sameGroove = false }: GrooveStart = {},
  ): Equilibrium | CarveFailure {
    const refusal = unsupportedReason(ski, conditions);
    if (refusal) return { ok: false, conditions, reason: refusal };
    const several = fine.severalGrooves(conditions);
    const ways: (() => number)[] = [];
    if (from && (sameGroove || !several)) {
      ways.push(() => fine.near(conditions, 'ok' in from ? [{ answer: from, share: 1 }] : from));
    }
    if (several && coarse) {
      for (const way of coarse.waysAfresh(conditions)) {
        ways.push(() => {
          const steps = way();
          if (steps < 0) return steps;
          const from = [{ answer: coarse.read(conditions, steps), share: 1 }];
          const near = fine.near(conditions, from);
          return near >= 0 ? near : fine.nearSofter(conditions, from);
        });
      }
    }
    ways.push(...fine.waysAfresh(conditions));
    let spent = 0;
    for (const way of ways) {
      const steps = way();
      spent += stepsSpent(steps);
      if (steps >= 0) return fine.read(conditions, spent);
    }
    return { ok: false, conditions, reason: unreached(conditions) };
  }

  return { solve };
}

function unreached({ edgeAngle, load, hardness }: CarveConditions): Sentence {
  return {
    key: 'carve.notReached',
    values: {
      edge: { quantity: 'angle', value: edgeAngle },
      load: { quantity: 'force', value: load },
      hardness: { quantity: 'hardness', value: hardness },
    },
  };
}
