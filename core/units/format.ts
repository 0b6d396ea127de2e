import { type MeasureName, type System, shownAs } from './measures.ts';

const MINUS = '\u2212';

/** A number with a fixed count of decimals and a true minus sign; `–` when it is not finite. */
export function decimal(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  const text = Math.abs(value).toFixed(Math.max(0, decimals));
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

/**
 * Decimals that an uncertainty supports: the uncertainty keeps one figure (two when it starts with 1),
 * and the value stops at the same place.
 */
export function decimalsFor(uncertainty: number): number {
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty)) return 0;
  const exponent = Math.floor(Math.log10(uncertainty));
  const leading = uncertainty / 10 ** exponent;
  return Math.min(6, Math.max(0, (leading < 1.95 ? 1 : 0) - exponent));
}

export interface FormattedQuantity {
  readonly value: string;
  /** Without the ± sign; absent when no uncertainty is known. */
  readonly plusMinus?: string;
  readonly unit: string;
  /** All of it in one line, for labels, live text and files. */
  readonly text: string;
}

export interface FormatOptions {
  readonly system?: System;
  /** In the unit the value is held in. */
  readonly uncertainty?: number;
  /** Decimals as shown, instead of the measure's own. */
  readonly decimals?: number;
}

/** `held` as text in the chosen system, to the digits its uncertainty supports. */
export function formatQuantity(
  held: number,
  measure: MeasureName,
  { system = 'metric', uncertainty, decimals }: FormatOptions = {},
): FormattedQuantity {
  const shown = shownAs(measure, system);
  const known = uncertainty !== undefined && uncertainty > 0 && Number.isFinite(uncertainty);
  const shownUncertainty = known ? uncertainty * shown.factor : 0;
  const places = decimals ?? (known ? decimalsFor(shownUncertainty) : shown.decimals);
  const value = decimal(held * shown.factor, places);
  const plusMinus = known && value !== '–' ? decimal(shownUncertainty, places) : undefined;
  return { value, plusMinus, unit: shown.unit, text: joined(value, plusMinus, shown.unit) };
}

function joined(value: string, plusMinus: string | undefined, unit: string): string {
  const number = plusMinus ? `${value} ± ${plusMinus}` : value;
  if (!unit || value === '–') return number;
  if (unit === '°') return plusMinus ? `(${number})°` : `${number}°`;
  return `${number}\u00a0${unit}`;
}
