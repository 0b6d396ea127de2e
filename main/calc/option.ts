import type { PlainKey } from '../../core/language/index.ts';
import { readIn } from '../../core/units/index.ts';
import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { t } from './words.ts';

type Options = CommandInput['options'];

export interface Range {
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly whole?: boolean;
  /** What the unit is called, where it is a word. */
  readonly called?: PlainKey;
}

/**
 * One or several comma-separated numbers, or `fallback` when the option is absent. Each is in the option's unit,
 * or carries one of the same kind: `--span 1.2m`.
 *
 * @throws InputFault naming what was given and what is accepted
 */
export function numberList(options: Options, name: string, range: Range, fallback: number[]): number[] {
  const given = options[name];
  if (typeof given !== 'string') return fallback;
  return given.split(',').map(part => parseNumber(name, part.trim(), range));
}

/** The same for an option that takes a single number. */
export function oneNumber(options: Options, name: string, range: Range): number | null;
export function oneNumber(options: Options, name: string, range: Range, fallback: number): number;
export function oneNumber(options: Options, name: string, range: Range, fallback: number | null = null) {
  const given = options[name];
  return typeof given === 'string' ? parseNumber(name, given.trim(), range) : fallback;
}

function parseNumber(name: string, text: string, range: Range): number {
  const value = numberIn(text, range);
  if (value !== null) return value;
  const values = { option: name, given: JSON.stringify(text), accepted: acceptedIn(range) };
  throw new InputFault(t('calc.option.notAccepted', values));
}

/** What a range accepts, in words. */
export function acceptedIn({ unit, from, to, whole, called }: Range): string {
  const shown = called ? t(called) : unit;
  const last = `${to}${shown === '°' ? shown : ` ${shown}`}`.trimEnd();
  return t(whole ? 'calc.wholeRange' : 'calc.range', { from, to: last });
}

/** The number a text says, in the unit of the range or in one of its kind; null when it is none or outside. */
export function numberIn(text: string, { unit, from, to, whole = false }: Range): number | null {
  // A comma separates several values, so that here it is no decimal point.
  const read = text.includes(',') ? null : readIn(text, unit);
  if (!read?.ok || read.value < from || read.value > to) return null;
  return whole && !Number.isInteger(read.value) ? null : read.value;
}

/**
 * One of the accepted words, capitals or not; null when the option is absent.
 *
 * @throws InputFault naming what was given and what is accepted
 */
export function oneOf<T extends string>(options: Options, name: string, accepted: readonly T[]): T | null {
  const given = options[name];
  if (given === undefined) return null;
  const found = accepted.find(each => each.toLowerCase() === String(given).toLowerCase());
  if (found) return found;
  const values = { option: name, given: String(given), accepted: accepted.join(', ') };
  throw new InputFault(t('calc.option.notOneOf', values));
}
