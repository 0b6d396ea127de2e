/** Where a descent ended. */
export interface Descent {
  readonly value: number;
  readonly iterations: number;
  /** Largest component of the gradient. */
  readonly gradient: number;
}

/**
 * Descent to a minimum of a smooth function of many variables with a limited memory of past steps (L-BFGS:
 * Nocedal, Math. Comp. 35 (1980) 773–782, from memory). `evaluate` returns the value and fills the gradient.
 * `x` is changed in place. Ends when no component of the gradient reaches `tolerance`. Deterministic.
 */
export function descend(
  evaluate: (x: Float64Array, gradient: Float64Array) => number,
  x: Float64Array,
  options: { readonly iterations: number; readonly tolerance: number; readonly memory?: number },
): Descent {
  const n = x.length;
  const memory = options.memory ?? 12;
  const steps: Float64Array[] = [];
  const changes: Float64Array[] = [];
  const inverse: number[] = [];
  let gradient = new Float64Array(n);
  let trialGradient = new Float64Array(n);
  const trial = new Float64Array(n);
  const direction = new Float64Array(n);
  const weights = new Float64Array(memory);
  let value = evaluate(x, gradient);
  let iteration = 0;
  for (; iteration < options.iterations; iteration++) {
    if (largest(gradient) < options.tolerance) break;
    for (let i = 0; i < n; i++) direction[i] = -gradient[i];
    for (let k = steps.length - 1; k >= 0; k--) {
      weights[k] = inverse[k] * dot(steps[k], direction);
      add(direction, -weights[k], changes[k]);
    }
    const last = steps.length - 1;
    const scale =
      last >= 0
        ? 1 / (inverse[last] * dot(changes[last], changes[last]))
        : 0.1 / Math.max(1, largest(gradient));
    for (let i = 0; i < n; i++) direction[i] *= scale;
    for (let k = 0; k < steps.length; k++) {
      add(direction, weights[k] - inverse[k] * dot(changes[k], direction), steps[k]);
    }
    let descent = dot(direction, gradient);
    if (!(descent < 0)) {
      steps.length = 0;
      changes.length = 0;
      inverse.length = 0;
      for (let i = 0; i < n; i++) direction[i] = -gradient[i] / Math.max(1, largest(gradient));
      descent = dot(direction, gradient);
    }
    let length = 1;
    let found = false;
    for (let halving = 0; halving < 30; halving++) {
      for (let i = 0; i < n; i++) trial[i] = x[i] + length * direction[i];
      const trialValue = evaluate(trial, trialGradient);
      if (trialValue <= value + 1e-4 * length * descent) {
        value = trialValue;
        found = true;
        break;
      }
      length *= halving < 2 ? 0.5 : 0.25;
    }
    if (!found) {
      // A memory gone stale is dropped once; a plain downhill step that finds nothing is the end.
      if (steps.length === 0) break;
      steps.length = 0;
      changes.length = 0;
      inverse.length = 0;
      continue;
    }
    const step = new Float64Array(n);
    const change = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      step[i] = trial[i] - x[i];
      change[i] = trialGradient[i] - gradient[i];
    }
    x.set(trial);
    [gradient, trialGradient] = [trialGradient, gradient];
    const along = dot(step, change);
    if (along > 1e-12 * Math.sqrt(dot(step, step) * dot(change, change))) {
      steps.push(step);
      changes.push(change);
      inverse.push(1 / along);
      if (steps.length > memory) {
        steps.shift();
        changes.shift();
        inverse.shift();
      }
    }
  }
  return { value, iterations: iteration, gradient: largest(gradient) };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

function add(to: Float64Array, share: number, from: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] += share * from[i];
}

function largest(list: Float64Array): number {
  let most = 0;
  for (let i = 0; i < list.length; i++) most = Math.max(most, Math.abs(list[i]));
  return most;
}
