import { CONTACT_LENGTH_MM } from '../../core/pair/index.ts';
import type { Range } from './option.ts';

/** What is accepted of what belongs to the ski; everything else is in core/conditions. */
export const CONTACT_LENGTH: Range = { unit: 'mm', ...CONTACT_LENGTH_MM };

/** Load off the boot centre: as far as the groove is solved, a quarter of the contact length either way. */
export function foreRange(contactLengthMm: number): Range {
  return { unit: 'mm', from: -contactLengthMm / 4, to: contactLengthMm / 4 };
}
