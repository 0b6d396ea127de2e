import { derivativesOf } from './derivative-tape.ts';
import { LaneProgram, type Rows } from './lane-program.ts';
import type { Recording } from './tape-operation.ts';

export interface DerivativeSinks {
  /** Outputs; a row has one for each. */
  readonly out?: Rows;
  /** Jacobian, row-major outputs × inputs. */
  readonly jacobian?: Rows;
  /** Where its last row goes, if not there. */
  readonly lastSlopes?: Rows;
  /** Of Σ weight·output the Hessian, row-major inputs × inputs, both halves, and the gradients to inputs and data. */
  readonly hessian?: Rows;
  readonly gradient?: Rows;
  readonly dataGradient?: Rows;
}

/** A formula's exact derivatives at many points at once. Evaluations share the work space: one at a time. */
export class Derivatives {
  /** Places in the row-major Jacobian without its last row, and in the Hessian's lower half, that can differ from zero. */
  readonly slopePlaces: Int32Array;
  readonly hessianPlaces: Int32Array;
  readonly #program: LaneProgram;
  readonly #inputCount: number;
  readonly #dataCount: number;
  readonly #weightCount: number;
  readonly #groups: Readonly<Record<keyof DerivativeSinks, { output: Int32Array; column: Int32Array }>>;

  constructor(of: Recording, withData: boolean) {
    const { recording, jacobian, hessian, gradient, data } = derivativesOf(of, withData);
    const { inputCount: n, outputs } = of;
    this.#program = new LaneProgram(recording);
    this.#inputCount = n;
    this.#dataCount = of.dataCount;
    this.#weightCount = outputs.length;
    let next = 0;
    const group = (column: Int32Array) => {
      next += column.length;
      return { output: Int32Array.from(column, (_, k) => next - column.length + k), column };
    };
    const out = group(Int32Array.from(outputs, (_, k) => k));
    const last = (outputs.length - 1) * n;
    const slopes = group(jacobian.filter(place => place < last));
    const lastSlopes = group(jacobian.filter(place => place >= last).map(place => place - last));
    const lower = group(hessian);
    this.slopePlaces = slopes.column;
    this.hessianPlaces = hessian;
    const mirrored = [...hessian.keys()].filter(k => hessian[k] % n !== Math.floor(hessian[k] / n));
    const mirror = (k: number) => (hessian[k] % n) * n + Math.floor(hessian[k] / n);
    this.#groups = {
      out,
      jacobian: slopes,
      lastSlopes,
      hessian: {
        output: Int32Array.from([...lower.output, ...mirrored.map(k => lower.output[k])]),
        column: Int32Array.from([...lower.column, ...mirrored.map(mirror)]),
      },
      gradient: group(gradient),
      dataGradient: group(data),
    };
  }

  /**
   * Evaluates `count` points, one a row of inputs, data and weights. Whatever can be nothing but zero is not written.
   */
  run(count: number, inputs: Rows, data: Rows, weights: Rows, sinks: DerivativeSinks): void {
    const wanted = [];
    const { jacobian } = sinks;
    const below = jacobian && { ...jacobian, at: jacobian.at + (this.#weightCount - 1) * this.#inputCount };
    const all = { ...sinks, lastSlopes: sinks.lastSlopes ?? below };
    for (const name of SINKS) {
      const rows = all[name];
      if (rows) wanted.push({ rows, ...this.#groups[name] });
    }
    this.#program.run(
      count,
      inputs,
      [
        { ...data, columns: this.#dataCount },
        { ...weights, columns: this.#weightCount },
      ],
      wanted,
    );
  }
}

const SINKS = ['out', 'jacobian', 'lastSlopes', 'hessian', 'gradient', 'dataGradient'] as const;
