import { type MathNode, parse } from 'mathjs/number';
import { StiffnessError } from './stiffness-error.ts';

/** Longest text and greatest count of parts a formula may have. */
export const FORMULA_LIMITS = { characters: 200, nodes: 120, depth: 40 } as const;

const CONSTANTS: Readonly<Record<string, number>> = { pi: Math.PI, e: Math.E };

const ONE_ARGUMENT: Readonly<Record<string, (a: number) => number>> = {
  abs: Math.abs,
  sqrt: Math.sqrt,
  exp: Math.exp,
  log: Math.log,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  sinh: Math.sinh,
  cosh: Math.cosh,
  tanh: Math.tanh,
};

const TWO_ARGUMENTS: Readonly<Record<string, (a: number, b: number) => number>> = {
  min: Math.min,
  max: Math.max,
};

const OPERATORS: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

const ACCEPTED =
  'numbers, s, pi, e, + - * / ^, parentheses, ' +
  `${Object.keys(ONE_ARGUMENT).join(', ')} of one value, ${Object.keys(TWO_ARGUMENTS).join(' and ')} of two`;

type Closure = (s: number) => number;

/** What of mathjs's node classes the walk below reads. */
interface Part {
  readonly type: string;
  readonly value?: unknown;
  readonly name?: string;
  readonly op?: string;
  readonly content?: Part;
  readonly fn?: { readonly type: string; readonly name?: string };
  readonly args?: readonly Part[];
}

/**
 * Compiles an expression in `s` (0 at the rear contact point, 1 at the front) into a closure.
 * Only what `ACCEPTED` lists gets through: the text is parsed by mathjs, then walked and rebuilt from our own
 * closures, so nothing of the parser's evaluator is reachable and no code is generated (the page's content
 * policy forbids it). Throws StiffnessError naming `field`.
 */
export function compileFormula(text: string, field = 'newtonM2'): Closure {
  if (text.trim() === '')
    throw new StiffnessError(field, 'empty formula found; an expression in s is accepted');
  if (text.length > FORMULA_LIMITS.characters) {
    throw new StiffnessError(
      field,
      `${text.length} characters found; up to ${FORMULA_LIMITS.characters} are accepted`,
    );
  }
  let root: MathNode;
  try {
    root = parse(text);
  } catch (cause) {
    const detail = cause instanceof Error ? cause.message : String(cause);
    throw new StiffnessError(field, `"${text}" cannot be read (${detail}); accepted: ${ACCEPTED}`);
  }
  let nodes = 0;
  const refuse = (found: string): never => {
    throw new StiffnessError(field, `${found} found in "${text}"; accepted: ${ACCEPTED}`);
  };
  const build = (part: Part, depth: number): Closure => {
    nodes++;
    if (nodes > FORMULA_LIMITS.nodes || depth > FORMULA_LIMITS.depth) {
      const { nodes: most, depth: deepest } = FORMULA_LIMITS;
      throw new StiffnessError(
        field,
        `too long a formula found; up to ${most} parts nested ${deepest} deep are accepted`,
      );
    }
    const args = part.args ?? [];
    switch (part.type) {
      case 'ConstantNode': {
        const { value } = part;
        return typeof value === 'number' && Number.isFinite(value)
          ? () => value
          : refuse(`the value ${String(value)}`);
      }
      case 'SymbolNode': {
        const name = part.name ?? '';
        if (name === 's') return s => s;
        if (!Object.hasOwn(CONSTANTS, name)) return refuse(`the name "${name}"`);
        const value = CONSTANTS[name];
        return () => value;
      }
      case 'ParenthesisNode':
        return part.content ? build(part.content, depth + 1) : refuse('an empty parenthesis');
      case 'OperatorNode': {
        const op = part.op ?? '';
        if (args.length === 1 && (op === '-' || op === '+')) {
          const a = build(args[0], depth + 1);
          return op === '-' ? s => -a(s) : a;
        }
        if (args.length !== 2 || !Object.hasOwn(OPERATORS, op)) return refuse(`the operator "${op}"`);
        return both(OPERATORS[op], build(args[0], depth + 1), build(args[1], depth + 1));
      }
      case 'FunctionNode': {
        const name = part.fn?.type === 'SymbolNode' ? (part.fn.name ?? '') : '';
        if (args.length === 1 && Object.hasOwn(ONE_ARGUMENT, name)) {
          const apply = ONE_ARGUMENT[name];
          const a = build(args[0], depth + 1);
          return s => apply(a(s));
        }
        if (args.length === 2 && Object.hasOwn(TWO_ARGUMENTS, name)) {
          return both(TWO_ARGUMENTS[name], build(args[0], depth + 1), build(args[1], depth + 1));
        }
        return refuse(`"${name}" of ${args.length} value${args.length === 1 ? '' : 's'}`);
      }
      default:
        return refuse(`a ${part.type.replace(/Node$/, '').toLowerCase()}`);
    }
  };
  return build(root as unknown as Part, 0);
}

function both(apply: (a: number, b: number) => number, a: Closure, b: Closure): Closure {
  return s => apply(a(s), b(s));
}
