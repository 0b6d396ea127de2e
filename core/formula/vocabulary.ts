import type { Sentence } from '../language/index.ts';
/** A function a formula may name: how many values it takes, and what it makes of them. */
export interface FormulaFunction {
  readonly least: number;
  readonly most: number;
  readonly apply: (...values: number[]) => number;
}

/** What a formula may consist of, beside numbers, parentheses and + − * / ^. */
export interface Vocabulary {
  readonly functions: Readonly<Record<string, FormulaFunction>>;
  readonly constants: Readonly<Record<string, number>>;
  /** Longest text and greatest count of parts, and how deep they may be nested. */
  readonly limits: { readonly characters: number; readonly nodes: number; readonly depth: number };
}

const takes = (least: number, most: number, apply: (...values: number[]) => number): FormulaFunction => ({
  least,
  most,
  apply,
});

const ofOne = {
  abs: takes(1, 1, Math.abs),
  sqrt: takes(1, 1, Math.sqrt),
  exp: takes(1, 1, Math.exp),
  log: takes(1, 1, Math.log),
  sin: takes(1, 1, Math.sin),
  cos: takes(1, 1, Math.cos),
  tan: takes(1, 1, Math.tan),
  sinh: takes(1, 1, Math.sinh),
  cosh: takes(1, 1, Math.cosh),
  tanh: takes(1, 1, Math.tanh),
};

/** Enough for any stiffness a person writes down; a text from a stranger's file cannot keep the page busy. */
export const TYPED_LIMITS = { characters: 200, nodes: 120, depth: 40 } as const;

/** What a person may type, in a pair file or a field. */
export const TYPED: Vocabulary = {
  functions: { ...ofOne, min: takes(2, 2, Math.min), max: takes(2, 2, Math.max) },
  constants: { pi: Math.PI, e: Math.E },
  limits: TYPED_LIMITS,
};

/** What a working prints: our own text, so only its meaning is limited. */
export const PRINTED: Vocabulary = {
  functions: {
    ...ofOne,
    acos: takes(1, 1, Math.acos),
    asin: takes(1, 1, Math.asin),
    atan: takes(1, 1, Math.atan),
    atan2: takes(2, 2, Math.atan2),
    min: takes(2, Number.POSITIVE_INFINITY, Math.min),
    max: takes(2, Number.POSITIVE_INFINITY, Math.max),
  },
  constants: { pi: Math.PI },
  limits: {
    characters: Number.POSITIVE_INFINITY,
    nodes: Number.POSITIVE_INFINITY,
    depth: Number.POSITIVE_INFINITY,
  },
};

/** What the vocabulary takes, for whoever wrote something else. */
export function accepted({ functions, constants }: Vocabulary, names: readonly string[]): Sentence {
  const taking = (least: number) => Object.keys(functions).filter(name => functions[name].least === least);
  return {
    key: 'formula.vocabulary',
    values: { names: [...names, ...Object.keys(constants)], ofOne: taking(1), ofTwo: taking(2) },
  };
}
