import { expect, it } from 'vitest';
import { terminalSpeed } from '../../core/run/index.ts';

it('m 80 kg, α 20°, μ 0.05, ρ 1.0, C_dA 0.40: terminal 34.03 m/s [derived]', () => {
  const run = { mass: 80, slope: (20 * Math.PI) / 180, friction: 0.05, airDensity: 1, dragArea: 0.4 };
  expect(Math.abs(terminalSpeed(run) - 34.03)).toBeLessThan(0.005);
});
