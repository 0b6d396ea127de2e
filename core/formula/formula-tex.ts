import { parse } from 'mathjs/number';
import { FieldError } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { type Part, unreadable } from './walk.ts';

/** How firmly a piece of set mathematics holds together; a looser one is put in parentheses inside a firmer one. */
const SUM = 1;
/** A quotient on one line, a/b. */
const SLASH = 2;
const PRODUCT = 3;
/** A function and what it is taken of: sin θ. */
const CALL = 4;
const FRACTION = 5;
const POWER = 6;
const ATOM = 7;

interface Piece {
  readonly tex: string;
  readonly firmness: number;
  /** Taller than a line: its parentheses must grow. */
  readonly tall: boolean;
  /** Begins with a minus sign. */
  readonly negative?: boolean;
  /** What the minus sign stands before, where it stands before all of it. */
  readonly opposite?: Piece;
}

/** Functions that stand before what they are taken of, as TeX writes them. */
const NAMED: Readonly<Record<string, string>> = {
  sin: '\\sin',
  cos: '\\cos',
  tan: '\\tan',
  sinh: '\\sinh',
  cosh: '\\cosh',
  tanh: '\\tanh',
  log: '\\ln',
  exp: '\\exp',
  asin: '\\arcsin',
  acos: '\\arccos',
  atan: '\\arctan',
  atan2: '\\operatorname{atan2}',
  min: '\\min',
  max: '\\max',
};

/**
 * A formula set in TeX from its text, so that what is read is what is reckoned with. Quotients stand as fractions,
 * inside other fractions on one line where that is short; parentheses are only those the setting needs.
 *
 * @param symbols TeX of each name in the formula; a name without one is set as it is written
 * @throws FieldError of the field `formula` for a text that cannot be read or holds anything but numbers, names, calls and + − * / ^
 */
export function formulaTex(text: string, symbols: ReadonlyMap<string, string>): string {
  let root: Part;
  try {
    root = parse(text) as unknown as Part;
  } catch (cause) {
    throw unreadable(text, cause, { key: 'formula.accepted' });
  }
  const refuse = (part: Sentence): never => {
    throw new FieldError({
      field: 'formula',
      found: { key: 'formula.inText', values: { part, text } },
      accepted: { key: 'formula.accepted' },
    });
  };

  const set = (part: Part, inFraction: boolean): Piece => {
    const args = part.args ?? [];
    switch (part.type) {
      case 'ConstantNode':
        return typeof part.value === 'number'
          ? number(part.value)
          : refuse({ key: 'formula.value', values: { value: String(part.value) } });
      case 'SymbolNode': {
        const name = part.name ?? '';
        return atom(symbols.get(name) ?? (name === 'pi' ? '\\pi' : name));
      }
      case 'ParenthesisNode':
        return part.content ? set(part.content, inFraction) : refuse({ key: 'formula.emptyParenthesis' });
      case 'OperatorNode': {
        if (args.length === 1) {
          const of = set(args[0], inFraction);
          if (part.op === '+') return of;
          if (part.op !== '-')
            return refuse({ key: 'formula.operator', values: { operator: part.op ?? '' } });
          return minus(of);
        }
        const [a, b] = args;
        switch (part.op) {
          case '+':
          case '-':
            return sum(part.op, set(a, inFraction), set(b, inFraction));
          case '*':
            return product(set(a, inFraction), set(b, inFraction));
          case '/':
            return quotient(a, b, inFraction);
          case '^':
            return power(a, b, inFraction);
        }
        return refuse({ key: 'formula.operator', values: { operator: part.op ?? '' } });
      }
      case 'FunctionNode':
        return call(part.fn?.name ?? '', args, inFraction);
      default:
        return refuse({ key: 'formula.part', values: { kind: part.type } });
    }
  };

  const quotient = (a: Part, b: Part, inFraction: boolean): Piece => {
    const under = set(b, true);
    const inner = bareOf(a);
    if (inner?.op === '/' && inner.args?.length === 2) {
      // A fraction over something is one fraction over both.
      const [top, bottom] = inner.args;
      return fraction(set(top, true), product(set(bottom, true), under));
    }
    const over = set(a, true);
    const oneLine = inFraction && !over.tall && !under.tall && under.firmness >= POWER && !over.negative;
    if (!oneLine) return fraction(over, under);
    return { tex: `${within(over, PRODUCT)}/${under.tex}`, firmness: SLASH, tall: false };
  };

  const power = (a: Part, b: Part, inFraction: boolean): Piece => {
    const exponent = raised(set(b, true).tex);
    const inner = bareOf(a);
    if (inner?.type === 'FunctionNode' && inner.args?.length === 1 && inner.fn?.name) {
      const command = NAMED[inner.fn.name];
      // −1 over a function would be read as its inverse.
      if (command?.startsWith('\\') && inner.fn.name !== 'exp' && Number(exponent) > 0) {
        return named(`${command}^${exponent}`, [set(inner.args[0], inFraction)]);
      }
    }
    const base = set(a, inFraction);
    const tex =
      base.firmness < ATOM ? parenthesised(base) : /['^]/.test(base.tex) ? `{${base.tex}}` : base.tex;
    return { tex: `${tex}^${exponent}`, firmness: POWER, tall: base.tall };
  };

  const call = (name: string, args: readonly Part[], inFraction: boolean): Piece => {
    const of = args.map(arg => set(arg, inFraction));
    if (name === 'sqrt' && of.length === 1)
      return { tex: `\\sqrt{${of[0].tex}}`, firmness: ATOM, tall: of[0].tall };
    if (name === 'abs' && of.length === 1) {
      const [left, right] = of[0].tall ? ['\\left|', '\\right|'] : ['|', '|'];
      return { tex: `${left}${of[0].tex}${right}`, firmness: ATOM, tall: of[0].tall };
    }
    return Object.hasOwn(NAMED, name)
      ? named(NAMED[name], of)
      : refuse({ key: 'formula.name', values: { name } });
  };

  return set(root, false).tex;
}

const atom = (tex: string): Piece => ({ tex, firmness: ATOM, tall: false });

function number(value: number): Piece {
  const [digits, exponent] = String(value).split('e');
  if (exponent === undefined) return atom(digits);
  const ten = `10^${raised(String(Number(exponent)))}`;
  return digits === '1' ? atom(ten) : { tex: `${digits} \\cdot ${ten}`, firmness: PRODUCT, tall: false };
}

const fraction = (over: Piece, under: Piece): Piece => ({
  tex: `\\frac{${over.tex}}{${under.tex}}`,
  firmness: FRACTION,
  tall: true,
});

const minus = (of: Piece): Piece => ({
  tex: `-${within(of, SLASH)}`,
  firmness: SUM,
  tall: of.tall,
  negative: true,
  opposite: of,
});

function sum(sign: '+' | '-', a: Piece, b: Piece): Piece {
  const right = b.negative || (sign === '-' && b.firmness === SUM) ? parenthesised(b) : b.tex;
  return { tex: `${a.tex} ${sign} ${right}`, firmness: SUM, tall: a.tall || b.tall, negative: a.negative };
}

function product(a: Piece, b: Piece): Piece {
  if (a.opposite) return minus(product(a.opposite, b));
  const [left, right] = [within(a, PRODUCT), within(b, PRODUCT)];
  const apart =
    [a.firmness, b.firmness].some(each => each === SUM || each === FRACTION) || a.firmness === CALL;
  // An o after a digit would be read as a nought.
  const nought = /\d$/.test(left) && /^[oO]/.test(right);
  const joint = /^\d/.test(right) ? ' \\cdot ' : apart || nought ? '\\,' : ' ';
  // What a function is taken of must be told from what follows it.
  const firmness = b.firmness === CALL ? CALL : PRODUCT;
  return { tex: `${left}${joint}${right}`, firmness, tall: a.tall || b.tall };
}

/** A call: one plain thing follows without parentheses. */
function named(command: string, of: readonly Piece[]): Piece {
  const tall = of.some(each => each.tall);
  const [only] = of;
  if (of.length === 1 && (only.firmness === ATOM || only.firmness === FRACTION)) {
    return { tex: `${command}${/^[\\{]/.test(only.tex) ? '' : ' '}${only.tex}`, firmness: CALL, tall };
  }
  return { tex: `${command}${around(of.map(each => each.tex).join(',\\, '), tall)}`, firmness: CALL, tall };
}

const around = (tex: string, tall: boolean): string => (tall ? `\\left(${tex}\\right)` : `(${tex})`);
const parenthesised = ({ tex, tall }: Piece): string => around(tex, tall);
const within = (piece: Piece, least: number): string =>
  piece.firmness < least ? parenthesised(piece) : piece.tex;
const raised = (tex: string): string => (tex.length === 1 ? tex : `{${tex}}`);

/** What stands inside any number of parentheses. */
function bareOf(part: Part): Part | undefined {
  return part.type === 'ParenthesisNode' ? part.content && bareOf(part.content) : part;
}
