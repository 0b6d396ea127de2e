import { readIn } from '../../core/units/index.ts';
import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';

type Options = CommandInput['options'];

export interface Range {
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly whole?: boolean;
}

/**
 * One or several comma-separated numbers, or `fallback` when the option is absent. Each is in the option's unit,
 * or carries one of the same kind: `--span 1.2m`.
 */
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
  // A comma separates several values, so that here it is no decimal point.
  const read = text.includes(',') ? null : readIn(text, unit);
  const value = read?.ok ? read.value : Number.NaN;
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
