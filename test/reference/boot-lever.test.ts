import { describe, expect, it } from 'vitest';
import { bootMoment, freeAngulation } from '../../core/boot/index.ts';

const DEGREE = Math.PI / 180;
const MM = 1e-3;

// Moment of the edge's reaction about the foot, M = F (y_w cosγ − H sinγ), and where it vanishes, tanγ = y_w/H
// [derived]: our own arithmetic on plane statics, no publication.
describe('the lever of the edge under the foot', () => {
  // Half waist mm, height of the foot bed mm, angulation at which the boot carries nothing, degrees.
  it.each([
    [33, 93, 19.5],
    [33, 60, 28.8],
    [50, 93, 28.3],
    [32.5, 93, 19.3],
  ])('%d and %d mm: %d°', (waist, height, degrees) => {
    expect(freeAngulation({ aside: waist * MM, below: height * MM }) / DEGREE).toBeCloseTo(degrees, 1);
  });

  // Load N, angulation degrees, moment N·m with 33 and 93 mm.
  it.each([
    [1000, 0, 33],
    [1000, 10, 16.349],
    [1000, 30, -17.921],
    [2000, -10, 97.297],
  ])('%d N at %d° of angulation: %d N·m', (load, degrees, moment) => {
    expect(bootMoment(load, { aside: 0.033, below: 0.093 }, degrees * DEGREE)).toBeCloseTo(moment, 2);
  });
});
