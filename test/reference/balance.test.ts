import { describe, expect, it } from 'vitest';
import { airDensity, balancedLoad, levelSpeed, speedCeiling } from '../../core/run/index.ts';

const RAD = Math.PI / 180;

describe('balance', () => {
  it('balanced load cosα/cosψ on level ground: 2.00 at 60°, 2.37 at 65° [derived]', () => {
    expect(balancedLoad(60 * RAD)).toBeCloseTo(2.0, 2);
    expect(balancedLoad(65 * RAD)).toBeCloseTo(2.37, 2);
  });

  it('ceiling √(g R_sc): 11.29 m/s at 13 m, 17.16 m/s at 30 m [derived]', () => {
    expect(speedCeiling(13)).toBeCloseTo(11.29, 2);
    expect(speedCeiling(30)).toBeCloseTo(17.16, 2);
    expect(levelSpeed(13, 89.99 * RAD)).toBeCloseTo(speedCeiling(13), 4);
  });
});

it('standard atmosphere at 0, 1000, 2000, 3000 m [from memory of ISA + derived]', () => {
  const densities = [1.225, 1.1116, 1.0065, 0.9091];
  for (const [i, density] of densities.entries()) {
    expect(Math.abs(airDensity(1000 * i) - density)).toBeLessThan(1e-4);
  }
});
