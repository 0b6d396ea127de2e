import { describe, expect, it } from 'vitest';
import { DormandPrince } from '../../../core/numeric/index.ts';

const swing = (_t: number, y: Float64Array, out: Float64Array) => {
  out[0] = y[1];
  out[1] = -y[0];
};

/** Integrates to `end` and gives the solver, which holds the state there. */
function integrated(f: typeof swing, y0: readonly number[], end: number, control = {}): DormandPrince {
  const solver = new DormandPrince(f, y0.length, control);
  solver.start(0, y0);
  while (solver.t < end) solver.step(end);
  return solver;
}

function fixedError(steps: number, inside: boolean): number {
  const h = 4 / steps;
  const solver = new DormandPrince(swing, 2, { firstStep: h, fixed: true });
  solver.start(0, [1, 0]);
  const out = new Float64Array(2);
  let worst = 0;
  while (solver.t < 4 - 1e-9) {
    solver.step(4);
    for (const s of inside ? [0.3, 0.7] : [1]) {
      const t = solver.tOld + s * (solver.t - solver.tOld);
      solver.at(t, out);
      worst = Math.max(worst, Math.abs(out[0] - Math.cos(t)));
    }
  }
  return worst;
}

describe('Dormand-Prince 5(4)', () => {
  it('has order five at the steps', () => {
    const order = Math.log2(fixedError(20, false) / fixedError(40, false));
    expect(order).toBeGreaterThan(4.8);
    expect(order).toBeLessThan(5.4);
  });

  it('has order four (local five) between the steps', () => {
    const order = Math.log2(fixedError(20, true) / fixedError(40, true));
    expect(order).toBeGreaterThan(4.4);
  });

  it('keeps the error near what was asked', () => {
    for (const relative of [1e-5, 1e-8, 1e-11]) {
      const [x, v] = integrated(swing, [1, 0], 20, { relative, absolute: relative }).y;
      expect(Math.hypot(x - Math.cos(20), v + Math.sin(20))).toBeLessThan(60 * relative);
    }
  });

  it('locates an event on the dense solution', () => {
    const solver = new DormandPrince(swing, 2, { relative: 1e-11, absolute: 1e-11 });
    const scratch = new Float64Array(2);
    solver.start(0, [1, 0]);
    let old = 1;
    for (;;) {
      solver.step(10);
      if (solver.y[0] < 0) break;
      old = solver.y[0];
    }
    const t = solver.locate((_t, y) => y[0], old, solver.y[0], scratch);
    expect(t).toBeCloseTo(Math.PI / 2, 8);
    expect(scratch[1]).toBeCloseTo(-1, 8);
  });

  it('ends exactly where it was told to', () => {
    expect(integrated(swing, [1, 0], 0.731).t).toBe(0.731);
  });

  it('says when the equations cannot be followed', () => {
    const blowUp = (_t: number, y: Float64Array, out: Float64Array) => {
      out[0] = y[0] * y[0];
    };
    expect(() => integrated(blowUp, [1], 2)).toThrow(/cannot be followed/);
  });

  it('refuses a fixed step without a length', () => {
    expect(() => new DormandPrince(swing, 2, { fixed: true })).toThrow(/firstStep/);
  });
});
