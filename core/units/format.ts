export type System = 'metric' | 'imperial';

interface Shown {
  readonly text: string;
  /** SI value of one unit. */
  readonly size: number;
  /** Decimals when no uncertainty says better. */
  readonly decimals: number;
}

const DEGREE = Math.PI / 180;
const INCH = 0.0254;
const FOOT = 0.3048;
const MILE = 1609.344;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;

const unit = (text: string, size: number, decimals: number): Shown => ({ text, size, decimals });

/** Metric unit a quantity is shown in, and its imperial counterpart. */
const UNITS = {
  mm: [unit('mm', 1e-3, 1), unit('in', INCH, 3)],
  cm: [unit('cm', 1e-2, 1), unit('in', INCH, 1)],
  m: [unit('m', 1, 2), unit('ft', FOOT, 1)],
  deg: [unit('°', DEGREE, 1), unit('°', DEGREE, 1)],
  N: [unit('N', 1, 0), unit('lbf', POUND_FORCE, 0)],
  'N/mm': [unit('N/mm', 1e3, 2), unit('lbf/in', POUND_FORCE / INCH, 1)],
  'N*m^2': [unit('N·m²', 1, 0), unit('lbf·ft²', POUND_FORCE * FOOT ** 2, 0)],
  'N/mm^3': [unit('N/mm³', 1e9, 2), unit('lbf/in³', POUND_FORCE / INCH ** 3, 0)],
  kg: [unit('kg', 1, 2), unit('lb', POUND, 1)],
  'km/h': [unit('km/h', 1 / 3.6, 1), unit('mph', MILE / 3600, 1)],
  'm/s': [unit('m/s', 1, 2), unit('ft/s', FOOT, 1)],
  s: [unit('s', 1, 2), unit('s', 1, 2)],
} as const;

export type ShownUnit = keyof typeof UNITS;

export interface FormatOptions {
  /** Standard uncertainty in SI; the value is shown to the digits it supports, with ±. */
  readonly uncertainty?: number;
  readonly system?: System;
}

/**
 * An SI value in the unit it is shown in. With an uncertainty, that keeps one figure (two when it begins
 * with 1) and the value stops at the same decimal place.
 */
export function formatQuantity(value: number, shownIn: ShownUnit, options: FormatOptions = {}): string {
  const shown = UNITS[shownIn][options.system === 'imperial' ? 1 : 0];
  const gap = shown.text === '°' ? '' : '\u00a0';
  const number = value / shown.size;
  if (!Number.isFinite(number)) return '–';
  const u = (options.uncertainty ?? 0) / shown.size;
  if (!(u > 0) || !Number.isFinite(u)) return `${rounded(number, shown.decimals)}${gap}${shown.text}`;
  const places = placesFor(u);
  const both = `${rounded(number, places)} ± ${rounded(u, places)}`;
  return gap === '' ? `(${both})${shown.text}` : `${both}${gap}${shown.text}`;
}

/** Decimal places an uncertainty supports; negative where it reaches into tens and beyond. */
export function placesFor(uncertainty: number): number {
  const exponent = Math.floor(Math.log10(uncertainty));
  const lead = uncertainty / 10 ** exponent;
  const figures = lead < 1.95 ? 2 : 1;
  return figures - 1 - exponent;
}

function rounded(value: number, places: number): string {
  const step = 10 ** -places;
  const text =
    places >= 0
      ? Math.abs(value).toFixed(Math.min(places, 20))
      : String(Math.round(Math.abs(value) / step) * step);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
