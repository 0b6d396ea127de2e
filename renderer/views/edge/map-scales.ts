import { type ScaleLinear, scaleLinear } from 'd3';
import { LEAST_EDGE, LEAST_LOAD, MOST_EDGE, MOST_LOAD } from '../../answers/index.ts';

/** px for an edge angle in degrees and a load in N. */
export interface Scales {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
}

export const scalesFor = (width: number, height: number): Scales => ({
  x: scaleLinear().domain([LEAST_EDGE, MOST_EDGE]).range([0, width]),
  y: scaleLinear().domain([LEAST_LOAD, MOST_LOAD]).range([height, 0]),
});
