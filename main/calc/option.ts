import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';

type Options = CommandInput['options'];

export interface Range {
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly whole?: boolean;
}

/** One or several comma-separated numbers, or `fallback` when the option is absent. */
export function numberList(options: Options, name: string, range: Range, fallback: number[]): number[] {
  const given = options[name];
  if (typeof given !== 'string') return fallback;
  return given.split(',').map(part => parseNumber(name, part.trim(), range));
}

export function oneNumber(options: Options, name: string, range: Range): number | null;
export function oneNumber(options: Options, name: string, range: Range, fallback: number): number;
export function oneNumber(options: Options, name: string, range: Range, fallback: number | null = null) {
  const given = options[name];
  return typeof given === 'string' ? parseNumber(name, given.trim(), range) : fallback;
}

function parseNumber(name: string, text: string, { unit, from, to, whole = false }: Range) {
  const value = decimal(text);
  if (value >= from && value <= to && (!whole || Number.isInteger(value))) return value;
  throw new InputFault(
    `--${name}: ${JSON.stringify(text)} is not accepted; give ${whole ? 'a whole number, ' : ''}${from} to ${to} ${unit}`,
  );
}

/** A number as people write one; not a number for what only a programmer would (`0x10`, the empty text). */
export function decimal(text: string): number {
  return /^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i.test(text) ? Number(text) : Number.NaN;
}

export function oneOf<T extends string>(options: Options, name: string, accepted: readonly T[]): T | null {
  const given = options[name];
  if (given === undefined) return null;
  const found = accepted.find(each => each.toLowerCase() === String(given).toLowerCase());
  if (found) return found;
  throw new InputFault(`--${name}: "${given}" is not accepted; give one of ${accepted.join(', ')}`);
}
