import type { Accepted } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { knownUnit, readCsvNumber } from '../table/index.ts';
import { sizeOf, unitOf } from '../units/index.ts';
import type { SheetField } from './sheet-columns.ts';

/** One cell turned into the pair file's unit, with what was guessed on the way. */
export type SheetCell =
  | { readonly ok: true; readonly value: number | string; readonly guess: Sentence | null }
  | { readonly ok: false; readonly accepted: Accepted };

const disciplineWords: Readonly<Record<string, string>> = {
  sl: 'SL',
  slalom: 'SL',
  gs: 'GS',
  giantslalom: 'GS',
  giant: 'GS',
  sg: 'SG',
  superg: 'SG',
  supergiant: 'SG',
  supergiantslalom: 'SG',
  dh: 'DH',
  downhill: 'DH',
  other: 'other',
};

const LONGEST_OWNER = 120;

/** Reads one cell. `unit` is the heading's unit; a unit written in the cell itself wins. */
export function readCell(field: SheetField, text: string, unit: string | null): SheetCell {
  const trimmed = text.trim();
  switch (field) {
    case 'owner':
      return trimmed.length > LONGEST_OWNER
        ? { ok: false, accepted: { key: 'accepted.textUpTo', values: { most: LONGEST_OWNER } } }
        : { ok: true, value: trimmed, guess: null };
    case 'name':
    case 'notes':
      return { ok: true, value: trimmed, guess: null };
    case 'discipline': {
      const value = disciplineWords[trimmed.toLowerCase().replace(/[^a-z]/g, '')];
      return value === undefined
        ? { ok: false, accepted: { oneOf: ['SL', 'GS', 'SG', 'DH', 'other'] } }
        : { ok: true, value, guess: null };
    }
    case 'sideAngleDeg':
    case 'baseBevelDeg':
      return readAngle(field, trimmed);
    case 'massKg':
      return readQuantity(trimmed, unit, 'kg', value => (value > 20 ? 'g' : 'kg'), {
        key: 'pair.massSuchAs',
      });
    case 'lengthMm':
    case 'contactLengthMm':
      return readQuantity(trimmed, unit, 'mm', value => (value >= 400 ? 'mm' : value >= 40 ? 'cm' : 'm'), {
        key: 'pair.lengthSuchAs',
      });
    default:
      return readQuantity(
        trimmed,
        unit,
        'mm',
        value =>
          field.endsWith('WidthMm') && value < 0.3
            ? 'm'
            : field.endsWith('WidthMm') && value < 25
              ? 'cm'
              : 'mm',
        { key: 'pair.widthSuchAs' },
      );
  }
}

function readAngle(field: SheetField, text: string): SheetCell {
  const accepted: Accepted = {
    key: field === 'sideAngleDeg' ? 'pair.sideAngleSuchAs' : 'pair.baseBevelSuchAs',
  };
  const number = readCsvNumber(text);
  if (number === null || (number.unit !== null && knownUnit(number.unit) !== 'deg'))
    return { ok: false, accepted };
  // Some technicians write the side edge as its distance from the right angle.
  if (field === 'sideAngleDeg' && number.value >= 0 && number.value <= 10) {
    const value = 90 - number.value;
    return { ok: true, value, guess: { key: 'pair.readAsDegrees', values: { text, value } } };
  }
  return { ok: true, value: number.value, guess: null };
}

/** A quantity in `own`, the pair file's unit; what bears no unit is taken in the likely one. */
function readQuantity(
  text: string,
  headingUnit: string | null,
  own: string,
  likely: (value: number) => string,
  accepted: Accepted,
): SheetCell {
  const number = readCsvNumber(text);
  if (number === null) return { ok: false, accepted };
  const written = number.unit === null ? headingUnit : knownUnit(number.unit);
  const stated = written !== null && unitOf(written)?.kind === unitOf(own)?.kind;
  if (number.unit !== null && !stated) return { ok: false, accepted };
  const unit = stated ? written : likely(Math.abs(number.value));
  // Twelve digits keep 16.5 cm from reading as 165.00000000000003 mm.
  const value = Number(((number.value * sizeOf(unit)) / sizeOf(own)).toPrecision(12));
  const guessed = !stated && unit !== own;
  return { ok: true, value, guess: guessed ? { key: 'pair.noUnitReadAs', values: { text, unit } } : null };
}
