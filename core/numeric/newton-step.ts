import type { Missed } from './chain-equations.ts';
import type { ChainIterate } from './chain-iterate.ts';
import { ChainRecursion, type ChainRightSide } from './chain-recursion.ts';
import { CurvatureBelief } from './curvature-belief.ts';

/** First regularisation, the factors it grows by (before and after one has worked), and when to give up. */
const FIRST = 1e-4;
const FIRST_GROWTH = 100;
const GROWTH = 8;
const DECAY = 3;
const GREATEST = 1e20;
/** Where this does not help, or the system is singular, the conditions at the ends are taken to depend on each other. */
const DEPENDENT = 1e8;
/** They then give way by this a unit of their multipliers. */
const SOFTNESS = 1e-8;
/** Growth beyond the first attempts is no longer by leaps. */
const LEAPS = 3;

/** Finds the Newton step of the barrier problem from where a chain's iterate stands, and writes it there. */
export class NewtonStep {
  readonly recursion: ChainRecursion;
  readonly #right: ChainRightSide;
  /** Node and control Hessians before regularisation. */
  readonly #node: Float64Array;
  readonly #control: Float64Array;
  /** The regularisation that last proved necessary. */
  #last = 0;
  #soften = false;
  readonly #belief: CurvatureBelief;
  readonly #parts: readonly Float64Array[];
  readonly #kept: readonly Float64Array[];

  constructor(private readonly iterate: ChainIterate) {
    const { equations, states, controls, slacks } = iterate;
    const { n, m, N, problem } = equations;
    const none = new Float64Array(0);
    const { start = none, end = none } = problem.ends ?? {};
    this.recursion = new ChainRecursion(n, m, N, start, end, equations.pattern);
    this.#belief = new CurvatureBelief(iterate, this.recursion);
    this.#right = {
      ...equations.missed(),
      middle: new Float64Array(N * (n + m)),
      node: new Float64Array((N + 1) * n),
      control: new Float64Array(N * m),
    };
    this.#node = new Float64Array((N + 1) * n * n);
    this.#control = new Float64Array(N * m);
    this.#parts = [
      ...[states, controls, slacks].flatMap(part => [part.change, part.lowChange, part.highChange]),
      iterate.costateChange,
      iterate.endsChange,
    ];
    this.#kept = this.#parts.map(part => part.slice());
  }

  /** Forgets what another solution needed; `soften` as in the solver's options. */
  begin(soften: boolean): void {
    this.#last = 0;
    this.#soften = soften;
    this.#belief.begin();
  }

  /** Takes the slopes and Hessians of the point the iterate stands at. */
  linearise(): void {
    const { equations, states, controls, slacks, costate, ends } = this.iterate;
    equations.linearise(states.at, controls.at, costate, ends, slacks.lowMultiplier, this.recursion);
  }

  /**
   * The step at barrier μ; movement is made dear by `damping` at least, and by as much more as it takes for the
   * step to lead to a minimum. Returns how much, −1 where there is no step.
   */
  find(mu: number, damping: number): number {
    const { recursion } = this;
    this.#condense();
    if (this.#soften) this.#belief.renew();
    if (!recursion.linearise()) return -1;
    let delta = damping;
    recursion.endSoftness = 0;
    for (let attempt = 0; ; attempt++) {
      this.#regularise(delta);
      const negative = recursion.factor(this.#soften ? this.#relax : undefined, false);
      if (negative === 0) break;
      if (recursion.endSoftness === 0 && (negative < 0 || delta > DEPENDENT)) {
        recursion.endSoftness = SOFTNESS;
        delta = damping;
        continue;
      }
      if (delta <= damping) delta = Math.max(10 * damping, this.#last === 0 ? FIRST : this.#last / DECAY);
      else delta *= this.#last === 0 && attempt < LEAPS ? FIRST_GROWTH : GROWTH;
      if (delta > GREATEST) return -1;
    }
    if (delta > damping) this.#last = delta;
    this.#right.middle.set(this.iterate.equations.costSlope);
    this.straighten();
    this.correct(mu, this.iterate.missed);
    return delta;
  }

  readonly #relax = (stage: number): number => this.#belief.soften(stage);

  /** The step with the same matrices for other violations, as second-order corrections want it. */
  correct(mu: number, missed: Missed): void {
    this.#pull(mu, missed.limit);
    this.#solve(mu, missed);
  }

  /** Takes back what `bend` has set; the step itself stays. */
  straighten(): void {
    const { states, controls, slacks } = this.iterate;
    states.straighten();
    controls.straighten();
    slacks.straighten();
  }

  /** From now on `correct` counts with a share of the products of the step's changes, `most` at most. */
  bend(share: number, most: number): void {
    const { states, controls, slacks } = this.iterate;
    states.bend(share, most);
    controls.bend(share, most);
    slacks.bend(share, most);
  }

  /** Keeps the step, to come back to it. */
  keep(): void {
    for (let i = 0; i < this.#parts.length; i++) this.#kept[i].set(this.#parts[i]);
  }

  /** The step kept. */
  back(): void {
    for (let i = 0; i < this.#parts.length; i++) this.#parts[i].set(this.#kept[i]);
  }

  /** Bounds and limits condensed into the nodes' and controls' Hessians. */
  #condense(): void {
    const { equations, states, controls, slacks } = this.iterate;
    const { n, N, limitCount: g, limitSlopes } = equations;
    const node = this.#node;
    node.set(equations.limitHessian);
    for (let k = 0; k <= N; k++) {
      const block = k * n * n;
      for (let i = 0; i < n; i++) node[block + i * n + i] += states.curvature(k * n + i);
      for (let r = 0; r < g; r++)
        addSquare(node, block, slacks.curvature(k * g + r), limitSlopes, k * g + r, n);
    }
    for (let at = 0; at < controls.size; at++) this.#control[at] = controls.curvature(at);
  }

  /** Gradients of the bounds, and of the limits by what they miss. */
  #pull(mu: number, limitMissed: Float64Array): void {
    const { equations, states, controls, slacks } = this.iterate;
    const { n, N, limitCount: g, limitSlopes } = equations;
    const { node, control } = this.#right;
    for (let at = 0; at < states.size; at++) node[at] = states.pull(mu, at);
    for (let at = 0; at < controls.size; at++) control[at] = controls.pull(mu, at);
    for (let k = 0; k <= N; k++) {
      for (let at = k * g; at < k * g + g; at++) {
        const pull = slacks.pull(mu, at) + slacks.curvature(at) * limitMissed[at];
        for (let i = 0; i < n; i++) node[k * n + i] += limitSlopes[at * n + i] * pull;
      }
    }
  }

  #regularise(delta: number): void {
    const { recursion } = this;
    const { nodeHessian, controlHessian, states: n, stages: N } = recursion;
    nodeHessian.set(this.#node);
    controlHessian.set(this.#control);
    if (delta === 0) return;
    for (let k = 0; k <= N; k++) {
      for (let i = 0; i < n; i++) nodeHessian[k * n * n + i * n + i] += delta;
    }
    for (let i = 0; i < controlHessian.length; i++) controlHessian[i] += delta;
  }

  /** Solves, and derives the changes of slacks and multipliers. */
  #solve(mu: number, missed: Missed): void {
    const { recursion, iterate } = this;
    const { equations, states, controls, slacks, costate, costateChange, ends, endsChange } = iterate;
    const { n, N, limitCount: g, limitSlopes } = equations;
    this.#right.defect.set(missed.defect);
    this.#right.ends.set(missed.ends);
    recursion.solve(this.#right);
    states.change.set(recursion.dx);
    controls.change.set(recursion.du);
    for (let i = 0; i < costate.length; i++) costateChange[i] = recursion.costate[i] - costate[i];
    for (let i = 0; i < ends.length; i++) endsChange[i] = recursion.endMultiplier[i] - ends[i];
    for (let k = 0; k <= N; k++) {
      for (let at = k * g; at < k * g + g; at++) {
        let change = missed.limit[at];
        for (let i = 0; i < n; i++) change += limitSlopes[at * n + i] * states.change[k * n + i];
        slacks.change[at] = change;
      }
    }
    states.followChange(mu);
    controls.followChange(mu);
    slacks.followChange(mu);
  }
}

/** Adds weight · s sᵀ, s the row `at` of `slopes`, to the block of a matrix. */
function addSquare(
  to: Float64Array,
  block: number,
  weight: number,
  slopes: Float64Array,
  at: number,
  n: number,
): void {
  for (let i = 0; i < n; i++) {
    const slope = weight * slopes[at * n + i];
    if (slope === 0) continue;
    for (let j = 0; j < n; j++) to[block + i * n + j] += slope * slopes[at * n + j];
  }
}
