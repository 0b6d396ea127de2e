import type { MathNode } from 'mathjs/number';
import { parsed } from './evaluate.ts';
import type { Working, WorkingValue } from './working.ts';

const FIGURES = 6;

const UNITS: Readonly<Record<string, string>> = { '1': '', rad: '\\mathrm{rad}' };

/**
 * The working in TeX with the numbers put in: symbol = formula in numbers = result and unit, SI. Numbers
 * keep six figures, so a reader with a calculator gets the result but for the last.
 */
export function substituted(working: Working): string {
  const values = new Map(working.inputs.map(input => [input.name, input.value]));
  const handler = (node: MathNode): string | undefined => {
    const { type, name, value } = node as unknown as { type: string; name?: string; value?: unknown };
    if (type === 'ConstantNode' && typeof value === 'number') return texNumber(value);
    if (type !== 'SymbolNode' || name === undefined) return undefined;
    const given = values.get(name);
    if (given === undefined) return undefined;
    const text = texNumber(given);
    // A sign or a power of ten would bind wrongly to what stands beside it.
    return given < 0 || text.includes('\\') ? `\\left(${text}\\right)` : text;
  };
  const numbers = parsed(working).toTex({ handler, parenthesis: 'keep' });
  return `${working.symbol} = ${numbers} = ${texValue(working.result)}`;
}

/** A value with its unit in TeX, six figures. */
export function texValue({ value, unit }: WorkingValue): string {
  const text = UNITS[unit] ?? texUnit(unit);
  return text === '' ? texNumber(value) : `${texNumber(value)}\\,${text}`;
}

/** `1.2345e-7` → `1.2345 \cdot 10^{-7}`. */
export function texNumber(value: number): string {
  if (!Number.isFinite(value)) return value === Number.POSITIVE_INFINITY ? '\\infty' : '\\text{not a number}';
  const [mantissa, exponent] = String(Number(value.toPrecision(FIGURES))).split('e');
  return exponent === undefined ? mantissa : `${mantissa} \\cdot 10^{${Number(exponent)}}`;
}

/** `N*m^2` → `\mathrm{N}\,\mathrm{m}^{2}`. */
function texUnit(unit: string): string {
  return unit
    .split(/([*/])/)
    .map(part => {
      if (part === '*') return '\\,';
      if (part === '/') return '/';
      const [name, power] = part.split('^');
      const upright = name === '1' ? '1' : `\\mathrm{${name}}`;
      return power === undefined ? upright : `${upright}^{${power}}`;
    })
    .join('');
}
