import { type MathNode, parse } from 'mathjs/number';
import { FormulaError } from './formula-error.ts';
import { accepted, type Vocabulary } from './vocabulary.ts';

type Closure = (x: number) => number;

const OPERATORS: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

/** What of mathjs's node classes is read. */
export interface Part {
  readonly type: string;
  readonly value?: unknown;
  readonly name?: string;
  readonly op?: string;
  readonly content?: Part;
  readonly fn?: { readonly type: string; readonly name?: string };
  readonly args?: readonly Part[];
}

/**
 * Reads a formula with mathjs and rebuilds it from our own closures, letting through only what the vocabulary
 * lists: nothing of the parser's evaluator is reachable and no code is generated (the page's content policy
 * forbids it).
 *
 * @param variable the name of the closure's argument; null for a formula of given values only
 * @param values names with a value; they go before the vocabulary's constants
 * @throws FormulaError
 */
export function walk(
  text: string,
  vocabulary: Vocabulary,
  variable: string | null,
  values: ReadonlyMap<string, number>,
): Closure {
  const { functions, constants, limits } = vocabulary;
  if (text.length > limits.characters) {
    throw new FormulaError(`${text.length} characters`, `up to ${limits.characters}`);
  }
  const names = () => accepted(vocabulary, [...(variable === null ? [] : [variable]), ...values.keys()]);
  let root: MathNode;
  try {
    root = parse(text);
  } catch (cause) {
    const detail = cause instanceof Error ? cause.message : String(cause);
    throw new FormulaError(`"${text}", which cannot be read (${detail}),`, names());
  }
  let nodes = 0;
  const refuse = (found: string): never => {
    throw new FormulaError(`${found} in "${text}"`, names());
  };
  const build = (part: Part, depth: number): Closure => {
    nodes++;
    if (nodes > limits.nodes || depth > limits.depth) {
      throw new FormulaError('too long a formula', `up to ${limits.nodes} parts nested ${limits.depth} deep`);
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
        if (name === variable) return x => x;
        const value = values.get(name) ?? (Object.hasOwn(constants, name) ? constants[name] : undefined);
        return value === undefined ? refuse(`the name "${name}"`) : () => value;
      }
      case 'ParenthesisNode':
        return part.content ? build(part.content, depth + 1) : refuse('an empty parenthesis');
      case 'OperatorNode': {
        const op = part.op ?? '';
        if (args.length === 1 && (op === '-' || op === '+')) {
          const a = build(args[0], depth + 1);
          return op === '-' ? x => -a(x) : a;
        }
        if (args.length !== 2 || !Object.hasOwn(OPERATORS, op)) return refuse(`the operator "${op}"`);
        return both(OPERATORS[op], build(args[0], depth + 1), build(args[1], depth + 1));
      }
      case 'FunctionNode': {
        const name = part.fn?.type === 'SymbolNode' ? (part.fn.name ?? '') : '';
        const known = Object.hasOwn(functions, name) ? functions[name] : null;
        if (!known || args.length < known.least || args.length > known.most) {
          return refuse(`"${name}" of ${args.length} value${args.length === 1 ? '' : 's'}`);
        }
        return applied(
          known.apply,
          args.map(arg => build(arg, depth + 1)),
        );
      }
      default:
        return refuse(`a ${part.type.replace(/Node$/, '').toLowerCase()}`);
    }
  };
  return build(root as unknown as Part, 0);
}

const both =
  (apply: (a: number, b: number) => number, a: Closure, b: Closure): Closure =>
  x =>
    apply(a(x), b(x));

/** A stiffness is asked for thousands of times, so calls of one and two values make no list. */
function applied(apply: (...values: number[]) => number, args: readonly Closure[]): Closure {
  const [a, b] = args;
  if (args.length === 1) return x => apply(a(x));
  if (args.length === 2) return both(apply, a, b);
  return x => apply(...args.map(arg => arg(x)));
}
