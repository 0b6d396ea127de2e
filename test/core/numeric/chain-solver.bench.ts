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
  const count = 500;
  const rows = (width: number, value = 0) => ({
    values: new Float64Array(count * width).fill(value),
    at: 0,
    width,
  });
  const at = rows(15, 0.3);
  const none = rows(0);
  const weights = rows(12, 1);
  const out = rows(12);
  const sinks = { jacobian: rows(180), hessian: rows(225) };
  const derivatives = f.derivativesOf(0, 12);
  bench('values at 500 points', () => f.valuesOver(count, at, none, out));
  bench('with slopes and Hessian', () => derivatives.run(count, at, none, weights, sinks));
  bench('derivatives written anew', () => void t.compile(terms.slice(-12)).derivativesOf(0, 12));
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
