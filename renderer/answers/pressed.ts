import type { BenchSetup } from '../../core/flex/index.ts';
import { type Bendable, flatTableOf, unitBench } from './beam.ts';
import type { Rest } from './bench-setup.ts';

/** The base line of a ski from the side: heights over the supports or the table, m. */
export interface Pressed {
  readonly x: Float64Array;
  readonly free: Float64Array;
  readonly pressed: Float64Array;
  readonly at: number;
  /** Height of the base under the press, free and pressed, and how far it came down. */
  readonly freeAt: number;
  readonly pressedAt: number;
  readonly deflection: number;
  /** N/m on two supports. */
  readonly spring: number;
}

/** Free camber as a parabola through the contact points, m. */
const camberAt = (camber: number, length: number, x: number): number =>
  (4 * camber * x * (length - x)) / (length * length);

/** The ski on the bench or on the table under the press of `setup`. */
export function pressedShape(pair: Bendable, setup: BenchSetup, rest: Rest): Pressed {
  const { length, rear, front, at, load } = setup;
  const { camber } = pair.ski;
  const bench = unitBench(pair, rear, front, at);
  const rearCamber = camberAt(camber, length, rear);
  const slope = (camberAt(camber, length, front) - rearCamber) / (front - rear);
  const over = (x: number) => camberAt(camber, length, x) - rearCamber - slope * (x - rear);
  if (rest === 'bench') {
    const free = bench.x.map(over);
    const deflection = load * bench.loadDeflection;
    return {
      x: bench.x,
      free,
      pressed: free.map((height, i) => height - load * bench.deflection[i]),
      at,
      freeAt: over(at),
      pressedAt: over(at) - deflection,
      deflection,
      spring: bench.spring,
    };
  }
  const { x, press } = flatTableOf(pair, at);
  const { gap, loadDeflection } = press(load);
  return {
    x,
    free: x.map(over),
    pressed: gap,
    at,
    freeAt: over(at),
    pressedAt: Math.max(0, over(at) - loadDeflection),
    deflection: loadDeflection,
    spring: bench.spring,
  };
}
