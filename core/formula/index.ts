/** Formulas as text: what a person types and what a working prints, read by one walker and never run as code. */
export { compileFormula } from './compile.ts';
export { evaluateFormula } from './evaluate.ts';
export { formulaTex } from './formula-tex.ts';
export { TYPED_LIMITS } from './vocabulary.ts';
