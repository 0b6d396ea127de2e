import { bench, describe } from 'vitest';
import { ChainRecursion } from '../../../core/numeric/chain-recursion.ts';
import { ChainSolver, Tape } from '../../../core/numeric/index.ts';
import { shortestDash, swingUp } from './chain-examples.ts';

/** The size of a skier between gates: 11 states, 4 controls, all states tied from end to end. */
function skierSized(stages: number): ChainRecursion {
  const [n, m] = [11, 4];
  const z = n + m;
  const ones = new Float64Array(n * n).map((_, i) => (i % (n + 1) === 0 ? 1 : 0));
  const r = new ChainRecursion(n, m, stages, ones, ones.slice());
  for (let i = 0; i < r.slopes.length; i++) r.slopes[i] = Math.sin(7 * i);
  for (let i = 0; i < r.middleHessian.length; i++)
    r.middleHessian[i] = Math.floor(i / z) % z === i % z ? 3 : 0.01;
  for (let i = 0; i < r.nodeHessian.length; i++) r.nodeHessian[i] = Math.floor(i / n) % n === i % n ? 1 : 0;
  r.controlHessian.fill(1);
  r.step.fill(0.1);
  return r;
}

describe('32 stages of 11 states, 4 controls and 11 conditions across', () => {
  const r = skierSized(32);
  r.linearise();
  bench('slopes and Hessians taken in', () => {
    r.linearise();
  });
  bench('folded', () => {
    r.factor();
  });
});

describe('a formula of 40 operations over 15 inputs', () => {
  const t = new Tape();
  const x = Array.from({ length: 15 }, () => t.input());
  const terms = [...x];
  for (let i = 0; i < 10; i++) {
    terms.push(t.sine(terms[i]), t.multiply(terms[i], terms[i + 1]), t.add(terms[i], terms[i + 2]));
    terms.push(t.divide(terms[terms.length - 1], t.shift(t.square(terms[i]), 1)));
  }
  const f = t.compile(terms.slice(-12));
  const at = new Float64Array(15).fill(0.3);
  const none = new Float64Array(0);
  const weights = new Float64Array(12).fill(1);
  const out = new Float64Array(12);
  const jacobian = new Float64Array(180);
  const hessian = new Float64Array(225);
  bench('values', () => f.values(at, none, 0, out));
  bench('with slopes and Hessian', () => f.derivatives(at, none, 0, weights, out, jacobian, hessian));
});

describe('whole solutions', () => {
  const dash = shortestDash(100);
  const dashSolver = new ChainSolver(dash.problem);
  bench('shortest dash, 100 stages', () => {
    dashSolver.solve(dash.guess);
  });
  const swing = swingUp(60, 6);
  const swingSolver = new ChainSolver(swing.problem);
  bench('swing up, 60 stages', () => {
    swingSolver.solve(swing.guess);
  });
});
