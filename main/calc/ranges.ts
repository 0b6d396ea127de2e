import { HARDNESS_SPAN, REBOUND_SPAN, WALL_STRENGTH_SPAN } from '../../core/carve/index.ts';
import { CONTACT_LENGTH_MM } from '../../core/pair/index.ts';
import type { Range } from './option.ts';

/** What is accepted of the options that more than one command takes. */
export const EDGE: Range = { unit: 'degrees', from: 0.5, to: 85 };
export const SLOPE: Range = { unit: 'degrees', from: 0, to: 60 };
/** H_V, over the range Mössner et al. 2013 measured [seen]. */
export const HARDNESS: Range = { unit: 'N/mm³', ...HARDNESS_SPAN };
/** How far packed snow springs back. */
export const REBOUND_RANGE: Range = { unit: 'mm', ...REBOUND_SPAN };
/** Strength of the wall of snow an edge leans on. */
export const WALL: Range = { unit: 'kPa', ...WALL_STRENGTH_SPAN };
/** A press may stand on the ski without pressing; a ski in its groove carries something. */
export const PRESS: Range = { unit: 'N', from: 0, to: 20_000 };
export const LOAD: Range = { ...PRESS, from: 1 };
export const CONTACT_LENGTH: Range = { unit: 'mm', ...CONTACT_LENGTH_MM };

/** Load off the boot centre: as far as the groove is solved, a quarter of the contact length either way. */
export function foreRange(contactLengthMm: number): Range {
  return { unit: 'mm', from: -contactLengthMm / 4, to: contactLengthMm / 4 };
}
