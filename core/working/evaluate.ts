import { type MathNode, parse } from 'mathjs/number';
import type { Working } from './working.ts';

const CONSTANTS: Readonly<Record<string, number>> = { pi: Math.PI };

const FUNCTIONS: Readonly<Record<string, (...args: number[]) => number>> = {
  abs: Math.abs,
  acos: Math.acos,
  asin: Math.asin,
  atan: Math.atan,
  atan2: Math.atan2,
  cos: Math.cos,
  cosh: Math.cosh,
  exp: Math.exp,
  log: Math.log,
  max: Math.max,
  min: Math.min,
  sin: Math.sin,
  sinh: Math.sinh,
  sqrt: Math.sqrt,
  tan: Math.tan,
  tanh: Math.tanh,
};

const OPERATORS: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

/** What the walk reads of a parsed formula. */
interface Part {
  readonly type: string;
  readonly value?: unknown;
  readonly name?: string;
  readonly op?: string;
  readonly content?: Part;
  readonly fn?: { readonly name?: string };
  readonly args?: readonly Part[];
}

/**
 * The value of a working's formula with its inputs put in, SI. Only numbers, the inputs' names, pi,
 * + − * / ^ and the functions above are known; anything else throws a RangeError naming the working.
 * Names of inputs go before constants and functions of the same name.
 */
export function evaluate(working: Working): number {
  const values = new Map(working.inputs.map(input => [input.name, input.value]));
  const refuse = (found: string): never => {
    throw new RangeError(`${working.key}: ${found} in "${working.formula}" is not known`);
  };
  const walk = (part: Part): number => {
    const args = (part.args ?? []).map(walk);
    switch (part.type) {
      case 'ConstantNode':
        return typeof part.value === 'number' ? part.value : refuse(String(part.value));
      case 'SymbolNode': {
        const name = part.name ?? '';
        const value = values.get(name) ?? (Object.hasOwn(CONSTANTS, name) ? CONSTANTS[name] : undefined);
        return value ?? refuse(`the name ${name}`);
      }
      case 'ParenthesisNode':
        return part.content ? walk(part.content) : refuse('an empty parenthesis');
      case 'OperatorNode': {
        const op = part.op ?? '';
        if (args.length === 1 && (op === '-' || op === '+')) return op === '-' ? -args[0] : args[0];
        return args.length === 2 && Object.hasOwn(OPERATORS, op)
          ? OPERATORS[op](args[0], args[1])
          : refuse(`the operator ${op}`);
      }
      case 'FunctionNode': {
        const name = part.fn?.name ?? '';
        return Object.hasOwn(FUNCTIONS, name) ? FUNCTIONS[name](...args) : refuse(`the function ${name}`);
      }
      default:
        return refuse(`a ${part.type}`);
    }
  };
  return walk(parsed(working) as unknown as Part);
}

/** The formula as mathjs reads it; a RangeError naming the working when it cannot be read. */
function parsed(working: Working): MathNode {
  try {
    return parse(working.formula);
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new RangeError(`${working.key}: "${working.formula}" cannot be read (${why})`);
  }
}
