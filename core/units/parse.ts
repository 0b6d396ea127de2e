import type { Sentence, Value } from '../language/index.ts';
import { type MeasureName, type System, shownAs } from './measures.ts';
import { spellingsOf, unitOf } from './table.ts';

export type Parsed =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false;
      /** The text found; undefined where there is none. */
      readonly found: Value | undefined;
      readonly accepted: Sentence;
    };

/** Longest text told of a field, letters. */
const LONGEST_TOLD = 60;

/**
 * Reads a quantity as a person writes it, as a number of `unit`: "165 cm" with `mm` is 1650. A number without
 * a unit is one of `unit`; any unit of the same kind is converted. A comma may stand for the decimal point.
 * Never throws; nothing but a number and a unit is read, no expression.
 */
export function readIn(text: string, unit: string): Parsed {
  const tidy = text
    .trim()
    .replace(/\u2212/g, '-')
    .replace(',', '.');
  const match = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(.*)$/i.exec(tidy);
  const own = unitOf(unit);
  const others = own ? spellingsOf(own.kind).filter(each => each !== unit) : [];
  const accepted: Sentence =
    unit === ''
      ? { key: 'accepted.number' }
      : others.length > 0
        ? { key: 'accepted.numberInOneOf', values: { unit, others } }
        : { key: 'accepted.numberIn', values: { unit } };
  const refused = (found: Value | undefined): Parsed => ({ ok: false, found, accepted });
  const quoted = (typed: string) =>
    `"${typed.length > LONGEST_TOLD ? `${typed.slice(0, LONGEST_TOLD)}…` : typed}"`;
  const typedText = text.trim() === '' ? undefined : quoted(text.trim());
  const number = Number(match?.[1]);
  if (!match || !Number.isFinite(number)) return refused(typedText);
  const spelling = match[2]!.trim();
  if (spelling === '' || spelling.toLowerCase() === unit.toLowerCase()) return { ok: true, value: number };
  const typed = unitOf(spelling);
  if (typed && own && typed.kind === own.kind) {
    const value = (number * typed.size) / own.size;
    return Number.isFinite(value) ? { ok: true, value } : refused(typedText);
  }
  return refused({ key: 'found.unit', values: { unit: quoted(match[2]!) } });
}

/** The same into the unit `measure` is held in; a bare number is in the unit on screen. */
export function parseQuantity(text: string, measure: MeasureName, system: System = 'metric'): Parsed {
  const { unit, factor } = shownAs(measure, system);
  const read = readIn(text, unit);
  return read.ok ? { ok: true, value: read.value / factor } : read;
}
