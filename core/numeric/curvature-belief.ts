import type { ChainIterate } from './chain-iterate.ts';
import type { ChainRecursion } from './chain-recursion.ts';

/** How the belief in the equations' curvature falls and rises again, and where it is given up. */
const SOFTER = 0.3;
const HARDER = 3;
const LEAST_SHARE = 0.02;

/**
 * How much of the equations' curvature the stages' Hessians hold beside that of the costs: all of it at first, less
 * where it would lead away from a minimum, and a little more again with each step.
 */
export class CurvatureBelief {
  #share = 1;
  /** Hessians of the stages' costs alone, and with the equations'. Made when first needed. */
  #cost: Float64Array | null = null;
  #whole: Float64Array | null = null;

  #separated = false;

  begin(): void {
    this.#share = 1;
  }

  /** For the next step, the recursion holding the whole Hessians of where the iterate stands. */
  renew(iterate: ChainIterate, recursion: ChainRecursion): void {
    this.#separated = false;
    const share = Math.min(1, HARDER * this.#share);
    if (share < 1) this.#set(share, iterate, recursion);
    this.#share = share;
  }

  /** Believes less; false where there is nothing left to give up. */
  soften(iterate: ChainIterate, recursion: ChainRecursion): boolean {
    if (this.#share === 0) return false;
    this.#set(this.#share > LEAST_SHARE ? SOFTER * this.#share : 0, iterate, recursion);
    return true;
  }

  /** After a step was found. */
  settle(): void {
    this.#share = Math.max(LEAST_SHARE, this.#share);
  }

  #set(share: number, { equations, states, controls }: ChainIterate, recursion: ChainRecursion): void {
    const to = recursion.middleHessian;
    this.#cost ??= new Float64Array(to.length);
    this.#whole ??= new Float64Array(to.length);
    const cost = this.#cost;
    const whole = this.#whole;
    if (!this.#separated) {
      whole.set(to);
      equations.costHessian(states.at, controls.at, cost);
      this.#separated = true;
    }
    this.#share = share;
    for (let i = 0; i < to.length; i++) to[i] = cost[i] + share * (whole[i] - cost[i]);
  }
}
