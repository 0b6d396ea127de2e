import { type MeasureName, type System, shownAs } from './measures.ts';

interface Spelled {
  readonly kind: string;
  readonly toBase: number;
}

/** Every accepted spelling: the kind of thing it measures and its size in that kind's SI unit. */
const UNITS: Record<string, Spelled> = {
  mm: { kind: 'length', toBase: 1e-3 },
  cm: { kind: 'length', toBase: 1e-2 },
  m: { kind: 'length', toBase: 1 },
  in: { kind: 'length', toBase: 0.0254 },
  '"': { kind: 'length', toBase: 0.0254 },
  ft: { kind: 'length', toBase: 0.3048 },
  "'": { kind: 'length', toBase: 0.3048 },
  '°': { kind: 'angle', toBase: Math.PI / 180 },
  deg: { kind: 'angle', toBase: Math.PI / 180 },
  rad: { kind: 'angle', toBase: 1 },
  'km/h': { kind: 'speed', toBase: 1 / 3.6 },
  kmh: { kind: 'speed', toBase: 1 / 3.6 },
  'm/s': { kind: 'speed', toBase: 1 },
  mph: { kind: 'speed', toBase: 0.44704 },
  n: { kind: 'force', toBase: 1 },
  kn: { kind: 'force', toBase: 1e3 },
  lbf: { kind: 'force', toBase: 4.4482216152605 },
  kgf: { kind: 'force', toBase: 9.80665 },
  kg: { kind: 'mass', toBase: 1 },
  g: { kind: 'mass', toBase: 1e-3 },
  lb: { kind: 'mass', toBase: 0.45359237 },
  'n·m²': { kind: 'stiffness', toBase: 1 },
  'n*m^2': { kind: 'stiffness', toBase: 1 },
  nm2: { kind: 'stiffness', toBase: 1 },
  'lbf·ft²': { kind: 'stiffness', toBase: 4.4482216152605 * 0.3048 ** 2 },
  'n/mm': { kind: 'spring', toBase: 1e3 },
  'n/m': { kind: 'spring', toBase: 1 },
  'n/cm': { kind: 'spring', toBase: 1e2 },
  'lbf/in': { kind: 'spring', toBase: 4.4482216152605 / 0.0254 },
  'n/mm³': { kind: 'hardness', toBase: 1e9 },
  'n/mm3': { kind: 'hardness', toBase: 1e9 },
  'n/m³': { kind: 'hardness', toBase: 1 },
  'n/m3': { kind: 'hardness', toBase: 1 },
  s: { kind: 'time', toBase: 1 },
  ms: { kind: 'time', toBase: 1e-3 },
  min: { kind: 'time', toBase: 60 },
  hz: { kind: 'frequency', toBase: 1 },
  '%': { kind: 'share', toBase: 0.01 },
};

export type Parsed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly reason: string };

/**
 * Reads what a person typed into the unit `measure` is held in. A bare number is in the unit on screen; a
 * number with a unit is converted ("165 cm", "41 mph", "2.5 in"). A comma may stand for the decimal point.
 * A failure says what was found and what would be accepted.
 */
export function parseQuantity(text: string, measure: MeasureName, system: System = 'metric'): Parsed {
  const shown = shownAs(measure, system);
  const tidy = text
    .trim()
    .replace(/\u2212/g, '-')
    .replace(',', '.');
  const match = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(.*)$/i.exec(tidy);
  const example = shown.unit ? `a number in ${shown.unit}` : 'a number';
  if (!match) {
    return { ok: false, reason: `"${text.trim() || 'nothing'}" found; ${example} is accepted` };
  }
  const number = Number(match[1]);
  const spelling = match[2]!.trim().toLowerCase();
  if (spelling === '' || spelling === shown.unit.toLowerCase()) {
    return { ok: true, value: number / shown.factor };
  }
  const typed = UNITS[spelling];
  const own = UNITS[shown.unit.toLowerCase()];
  if (!typed || !own || typed.kind !== own.kind) {
    const also = own
      ? Object.keys(UNITS).filter(unit => UNITS[unit]!.kind === own.kind && !/["'*]/.test(unit))
      : [];
    const others =
      also.length > 1 ? ` (or ${also.filter(unit => unit !== shown.unit.toLowerCase()).join(', ')})` : '';
    return { ok: false, reason: `unit "${match[2]}" found; ${example}${others} is accepted` };
  }
  return { ok: true, value: (number * typed.toBase) / own.toBase / shown.factor };
}
