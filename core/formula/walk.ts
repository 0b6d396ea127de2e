import { type MathNode, parse } from 'mathjs/number';
import { type Accepted, FieldError } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { accepted, type Vocabulary } from './vocabulary.ts';

type Closure = (x: number) => number;

const OPERATORS: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

/**
 * What the parser would read as something a person hardly meant: a percentage, a number in base 2, 8 or 16, and a
 * power of ten without its power, which is a number times Euler's.
 */
const MISLEADING = /[\d.]*\s*%|\b0[xbo]\w*|[\d.]+\s*e(?![-+]?\d|[a-z])/i;

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
 * @throws FieldError of the field `formula`
 */
export function walk(
  text: string,
  vocabulary: Vocabulary,
  variable: string | null,
  values: ReadonlyMap<string, number>,
): Closure {
  const { functions, constants, limits } = vocabulary;
  if (text.length > limits.characters) {
    throw new FieldError({
      field: 'formula',
      found: { key: 'found.characters', values: { count: text.length } },
      accepted: { to: limits.characters },
    });
  }
  const [odd] = MISLEADING.exec(text) ?? [];
  const names = () => accepted(vocabulary, [...(variable === null ? [] : [variable]), ...values.keys()]);
  if (odd !== undefined) {
    const part: Sentence = { key: 'formula.value', values: { value: odd.trim() } };
    throw new FieldError({
      field: 'formula',
      found: { key: 'formula.inText', values: { part, text } },
      accepted: names(),
    });
  }
  let root: MathNode;
  try {
    root = parse(text);
  } catch (cause) {
    throw unreadable(text, cause, names());
  }
  let nodes = 0;
  const refuse = (part: Sentence): never => {
    throw new FieldError({
      field: 'formula',
      found: { key: 'formula.inText', values: { part, text } },
      accepted: names(),
    });
  };
  const build = (part: Part, depth: number): Closure => {
    nodes++;
    if (nodes > limits.nodes || depth > limits.depth) {
      throw new FieldError({
        field: 'formula',
        found: { key: 'formula.tooLong' },
        accepted: { key: 'formula.parts', values: { parts: limits.nodes, depth: limits.depth } },
      });
    }
    const args = part.args ?? [];
    switch (part.type) {
      case 'ConstantNode': {
        const { value } = part;
        // A text of nothing but a remark.
        if (value === undefined) return refuse({ key: 'formula.empty' });
        return typeof value === 'number' && Number.isFinite(value)
          ? () => value
          : refuse({ key: 'formula.value', values: { value: String(value) } });
      }
      case 'SymbolNode': {
        const name = part.name ?? '';
        if (name === variable) return x => x;
        const value = values.get(name) ?? (Object.hasOwn(constants, name) ? constants[name] : undefined);
        return value === undefined ? refuse({ key: 'formula.name', values: { name } }) : () => value;
      }
      case 'ParenthesisNode':
        return part.content ? build(part.content, depth + 1) : refuse({ key: 'formula.emptyParenthesis' });
      case 'OperatorNode': {
        const op = part.op ?? '';
        if (args.length === 1 && (op === '-' || op === '+')) {
          const a = build(args[0], depth + 1);
          return op === '-' ? x => -a(x) : a;
        }
        if (args.length !== 2 || !Object.hasOwn(OPERATORS, op))
          return refuse({ key: 'formula.operator', values: { operator: op } });
        return both(OPERATORS[op], build(args[0], depth + 1), build(args[1], depth + 1));
      }
      case 'FunctionNode': {
        const name = part.fn?.type === 'SymbolNode' ? (part.fn.name ?? '') : '';
        const known = Object.hasOwn(functions, name) ? functions[name] : null;
        if (!known || args.length < known.least || args.length > known.most) {
          return refuse({ key: 'formula.call', values: { name, count: args.length } });
        }
        return applied(
          known.apply,
          args.map(arg => build(arg, depth + 1)),
        );
      }
      default:
        return refuse({ key: 'formula.part', values: { kind: part.type } });
    }
  };
  return build(root as unknown as Part, 0);
}

/** A text that is no formula, with the parser's own words of where it stops. */
export function unreadable(text: string, cause: unknown, accepted: Accepted): FieldError {
  const detail = cause instanceof Error ? cause.message : String(cause);
  return new FieldError({
    field: 'formula',
    found: { key: 'formula.unreadable', values: { text, detail } },
    accepted,
  });
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
