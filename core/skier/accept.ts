import { accept as acceptIn } from '../fault/index.ts';

/** @throws FieldError unless low ≤ value ≤ high */
export function accept(field: string, value: number, unit: string, low: number, high: number): void {
  acceptIn(field, value, { from: low, to: high, ...(unit && { unit }) });
}
