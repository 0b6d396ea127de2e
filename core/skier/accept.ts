/** @throws RangeError naming the field, the value found and what is accepted, unless low ≤ value ≤ high */
export function accept(field: string, value: number, unit: string, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${field}: ${value} ${unit} found; ${low} to ${high} ${unit} is accepted`);
  }
}
