import { Formula } from './formula.ts';
import { Op, type TwoArgumentFunction } from './tape-operation.ts';

export type { Formula, TwoArgumentFunction };

/** A value on the tape, by its place. */
export type Term = number & { readonly tape: unique symbol };

/**
 * Records a formula written once, to be evaluated with exact derivatives. Inputs are differentiated twice, data
 * once; both are numbered in the order of their calls.
 */
export class Tape {
  readonly #code: number[] = [];
  readonly #a: number[] = [];
  readonly #b: number[] = [];
  readonly #number: number[] = [];
  readonly #externals: (TwoArgumentFunction | null)[] = [];
  #inputs = 0;
  #data = 0;

  /** The next variable. */
  input(): Term {
    return this.#push(Op.Input, this.#inputs++);
  }

  /** The next value that is given with each evaluation but is no variable. */
  datum(): Term {
    return this.#push(Op.Datum, this.#data++);
  }

  constant(value: number): Term {
    return this.#push(Op.Constant, 0, 0, value);
  }

  add(a: Term, b: Term, ...more: Term[]): Term {
    return more.reduce((sum, term) => this.#push(Op.Add, sum, term), this.#push(Op.Add, a, b));
  }

  subtract(a: Term, b: Term): Term {
    return this.#push(Op.Subtract, a, b);
  }

  multiply(a: Term, b: Term, ...more: Term[]): Term {
    return more.reduce(
      (product, term) => this.#push(Op.Multiply, product, term),
      this.#push(Op.Multiply, a, b),
    );
  }

  divide(a: Term, b: Term): Term {
    return this.#push(Op.Divide, a, b);
  }

  /** factor · a */
  scale(a: Term, factor: number): Term {
    return this.#push(Op.Scale, a, 0, factor);
  }

  /** a + by */
  shift(a: Term, by: number): Term {
    return this.#push(Op.Shift, a, 0, by);
  }

  sine(a: Term): Term {
    return this.#push(Op.Sine, a);
  }

  cosine(a: Term): Term {
    return this.#push(Op.Cosine, a);
  }

  tanh(a: Term): Term {
    return this.#push(Op.Tanh, a);
  }

  squareRoot(a: Term): Term {
    return this.#push(Op.Root, a);
  }

  square(a: Term): Term {
    return this.#push(Op.Square, a);
  }

  reciprocal(a: Term): Term {
    return this.#push(Op.Reciprocal, a);
  }

  /** A function that is not a formula, such as a surface through solved points. */
  external(f: TwoArgumentFunction, a: Term, b: Term): Term {
    const term = this.#push(Op.External, a, b);
    this.#externals[term] = f;
    return term;
  }

  /** Closes the tape; `outputs` are what evaluations return, in this order. */
  compile(outputs: readonly Term[]): Formula {
    return new Formula({
      code: Uint8Array.from(this.#code),
      a: Int32Array.from(this.#a),
      b: Int32Array.from(this.#b),
      number: Float64Array.from(this.#number),
      externals: [...this.#externals],
      outputs: Int32Array.from(outputs),
      inputCount: this.#inputs,
      dataCount: this.#data,
    });
  }

  #push(code: number, a: number, b = 0, number = 0): Term {
    this.#a.push(a);
    this.#b.push(b);
    this.#number.push(number);
    this.#externals.push(null);
    return (this.#code.push(code) - 1) as Term;
  }
}
