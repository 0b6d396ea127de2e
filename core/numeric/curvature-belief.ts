import type { ChainIterate } from './chain-iterate.ts';
import type { ChainRecursion } from './chain-recursion.ts';

/** How the belief in the equations' curvature falls and rises again, and where it is given up. */
const SOFTER = 0.3;
const HARDER = 3;
const LEAST_SHARE = 0.02;
/** Stages softened at once from where the fold turns out indefinite, and how much more each time it does not help. */
const WINDOW = 8;
const WIDER = 2;

/**
 * How much of the equations' curvature the stages' Hessians hold beside that of the costs: all of it at first, less
 * about the stages where it would lead away from a minimum, and more again with each step.
 */
export class CurvatureBelief {
  readonly #share: Float64Array;
  /** Hessians of the stages' costs alone, and with the equations'. Made when first needed. */
  #cost: Float64Array | null = null;
  #whole: Float64Array | null = null;
  /** Stages whose two Hessians are those of this step. */
  readonly #separated: Uint8Array;
  #width = WINDOW;
  #lastFailure = 0;

  constructor(
    private readonly iterate: ChainIterate,
    private readonly recursion: ChainRecursion,
  ) {
    const { N } = iterate.equations;
    this.#share = new Float64Array(N);
    this.#separated = new Uint8Array(N);
  }

  begin(): void {
    this.#share.fill(1);
  }

  /** For the next step, the recursion holding the whole Hessians of where the iterate stands. */
  renew(): void {
    this.#separated.fill(0);
    this.#width = WINDOW;
    this.#lastFailure = this.#share.length;
    for (let k = 0; k < this.#share.length; k++) {
      if (this.#share[k] === 1) continue;
      this.#share[k] = Math.min(1, HARDER * Math.max(LEAST_SHARE, this.#share[k]));
      if (this.#share[k] < 1) this.#set(k);
    }
  }

  /**
   * Believes less about stage k, where the fold was found indefinite; returns the last stage changed, −1 where
   * there is nothing left to give up.
   */
  soften(k: number): number {
    const share = this.#share;
    const N = share.length;
    // Where the fold had got further since, this is another place.
    if (k < this.#lastFailure - this.#width) this.#width = WINDOW;
    else if (this.#lastFailure < N) this.#width = Math.min(N, Math.ceil(WIDER * this.#width));
    this.#lastFailure = k;
    for (;;) {
      const end = Math.min(N, k + this.#width);
      let any = false;
      for (let i = k; i < end; i++) {
        if (share[i] === 0) continue;
        share[i] = share[i] > LEAST_SHARE ? SOFTER * share[i] : 0;
        this.#set(i);
        any = true;
      }
      if (any) return end - 1;
      if (end === N) return -1;
      this.#width = Math.min(N, Math.ceil(WIDER * this.#width));
    }
  }

  #set(k: number): void {
    const { recursion, iterate } = this;
    const { equations } = iterate;
    const to = recursion.middleHessian;
    this.#cost ??= new Float64Array(to.length);
    this.#whole ??= new Float64Array(to.length);
    const cost = this.#cost;
    const whole = this.#whole;
    const block = to.length / this.#share.length;
    const from = k * block;
    if (this.#separated[k] === 0) {
      for (let i = from; i < from + block; i++) whole[i] = to[i];
      equations.costHessian(k, k + 1, cost);
      this.#separated[k] = 1;
    }
    const share = this.#share[k];
    for (let i = from; i < from + block; i++) to[i] = cost[i] + share * (whole[i] - cost[i]);
  }
}
