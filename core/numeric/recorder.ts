import { isBinary, Op, type Recording, type TwoArgumentFunction } from './tape-operation.ts';

/** A value on the tape, by its place. */
export type Term = number & { readonly tape: unique symbol };

/**
 * Records a formula written once, to be evaluated with exact derivatives. Inputs are differentiated twice, data
 * once; both are numbered in the order of their calls. What is written twice is computed once, what constants alone
 * decide is computed here, and what no output needs is left out.
 */
export class Recorder {
  readonly #code: number[] = [];
  readonly #a: number[] = [];
  readonly #b: number[] = [];
  readonly #number: number[] = [];
  readonly #externals: (TwoArgumentFunction | null)[] = [];
  /** Places by what they compute. */
  readonly #known = new Map<string, Term>();
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
    return more.reduce((sum, term) => this.#add(sum, term), this.#add(a, b));
  }

  subtract(a: Term, b: Term): Term {
    if (this.#isConstant(b)) return this.shift(a, -this.#number[b]);
    if (this.#isConstant(a)) return this.shift(this.scale(b, -1), this.#number[a]);
    return this.#push(Op.Subtract, a, b);
  }

  multiply(a: Term, b: Term, ...more: Term[]): Term {
    return more.reduce((product, term) => this.#multiply(product, term), this.#multiply(a, b));
  }

  divide(a: Term, b: Term): Term {
    if (this.#isConstant(b)) return this.scale(a, 1 / this.#number[b]);
    return this.#push(Op.Divide, a, b);
  }

  /** factor · a */
  scale(a: Term, factor: number): Term {
    if (factor === 1) return a;
    if (this.#isConstant(a)) return this.constant(factor * this.#number[a]);
    if (this.#code[a] === Op.Scale) return this.scale(this.#a[a] as Term, factor * this.#number[a]);
    return this.#push(Op.Scale, a, 0, factor);
  }

  /** a + by */
  shift(a: Term, by: number): Term {
    if (by === 0) return a;
    if (this.#isConstant(a)) return this.constant(this.#number[a] + by);
    return this.#push(Op.Shift, a, 0, by);
  }

  sine(a: Term): Term {
    return this.#unary(Op.Sine, a, Math.sin);
  }

  cosine(a: Term): Term {
    return this.#unary(Op.Cosine, a, Math.cos);
  }

  tanh(a: Term): Term {
    return this.#unary(Op.Tanh, a, Math.tanh);
  }

  squareRoot(a: Term): Term {
    return this.#unary(Op.Root, a, Math.sqrt);
  }

  square(a: Term): Term {
    return this.#unary(Op.Square, a, v => v * v);
  }

  reciprocal(a: Term): Term {
    return this.#unary(Op.Reciprocal, a, v => 1 / v);
  }

  /** A function that is not a formula, such as a surface through solved points. */
  external(f: TwoArgumentFunction, a: Term, b: Term): Term {
    const again = this.#externals.findIndex((g, i) => g === f && this.#a[i] === a && this.#b[i] === b);
    if (again >= 0) return again as Term;
    const term = this.#append(Op.External, a, b, 0);
    this.#externals[term] = f;
    return term;
  }

  /** What an external function wrote beside its value: 1 to 5 for [f_a, f_b, f_aa, f_ab, f_bb]. */
  part(external: Term, which: number): Term {
    return this.#push(Op.Part, external, 0, which);
  }

  /** What `outputs` need of the tape, in its order. */
  record(outputs: readonly Term[]): Recording {
    const place = this.#needed(outputs);
    const kept = [...place.keys()].filter(i => place[i] >= 0);
    const to = (operand: number, code: number) => (code <= Op.Constant ? operand : place[operand]);
    return {
      code: Uint8Array.from(kept, i => this.#code[i]),
      a: Int32Array.from(kept, i => to(this.#a[i], this.#code[i])),
      b: Int32Array.from(kept, i => (isBinary(this.#code[i]) ? place[this.#b[i]] : 0)),
      number: Float64Array.from(kept, i => this.#number[i]),
      externals: kept.map(i => this.#externals[i]),
      outputs: Int32Array.from(outputs, i => place[i]),
      inputCount: this.#inputs,
      dataCount: this.#data,
    };
  }

  /** The new place of each operation; −1 where no output needs it. Inputs and data stay. */
  #needed(outputs: readonly Term[]): number[] {
    const needed = this.#code.map(code => code <= Op.Datum);
    for (const i of outputs) needed[i] = true;
    for (let i = needed.length - 1; i >= 0; i--) {
      if (!needed[i] || this.#code[i] <= Op.Constant) continue;
      needed[this.#a[i]] = true;
      if (isBinary(this.#code[i])) needed[this.#b[i]] = true;
    }
    let next = 0;
    return needed.map(is => (is ? next++ : -1));
  }

  #isConstant(a: Term): boolean {
    return this.#code[a] === Op.Constant;
  }

  #add(a: Term, b: Term): Term {
    if (this.#isConstant(b)) return this.shift(a, this.#number[b]);
    if (this.#isConstant(a)) return this.shift(b, this.#number[a]);
    return this.#push(Op.Add, Math.min(a, b), Math.max(a, b));
  }

  #multiply(a: Term, b: Term): Term {
    if (this.#isConstant(b)) return this.scale(a, this.#number[b]);
    if (this.#isConstant(a)) return this.scale(b, this.#number[a]);
    if (a === b) return this.square(a);
    return this.#push(Op.Multiply, Math.min(a, b), Math.max(a, b));
  }

  #unary(code: number, a: Term, f: (v: number) => number): Term {
    return this.#isConstant(a) ? this.constant(f(this.#number[a])) : this.#push(code, a);
  }

  #push(code: number, a: number, b = 0, number = 0): Term {
    const key = `${code} ${a} ${b} ${number}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const term = this.#append(code, a, b, number);
    this.#known.set(key, term);
    return term;
  }

  #append(code: number, a: number, b: number, number: number): Term {
    this.#a.push(a);
    this.#b.push(b);
    this.#number.push(number);
    this.#externals.push(null);
    return (this.#code.push(code) - 1) as Term;
  }
}
