import { describe, expect, it } from 'vitest';
import { descend } from '../../../core/numeric/index.ts';

describe('descend', () => {
  it('finds the bottom of the banana valley (Rosenbrock 1960, from memory) at (1, 1)', () => {
    const x = Float64Array.of(-1.2, 1);
    const found = descend(
      (p, g) => {
        const [a, b] = p;
        g[0] = -400 * a * (b - a * a) - 2 * (1 - a);
        g[1] = 200 * (b - a * a);
        return 100 * (b - a * a) ** 2 + (1 - a) ** 2;
      },
      x,
      { iterations: 500, tolerance: 1e-9 },
    );
    expect(x[0]).toBeCloseTo(1, 7);
    expect(x[1]).toBeCloseTo(1, 7);
    expect(found.iterations).toBeLessThan(100);
  });
});
