import { Formula } from './formula.ts';
import { Recorder, type Term } from './recorder.ts';
import type { TwoArgumentFunction } from './tape-operation.ts';

export type { Formula, Term, TwoArgumentFunction };

/** A recorder whose record is evaluated with exact derivatives. */
export class Tape extends Recorder {
  /** Closes the tape; `outputs` are what evaluations return, in this order. */
  compile(outputs: readonly Term[]): Formula {
    return new Formula(this.record(outputs));
  }
}
