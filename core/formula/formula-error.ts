/** A formula that cannot be used: what was found in it, and what is accepted. Whoever asked adds the field. */
export class FormulaError extends RangeError {
  override readonly name = 'FormulaError';

  constructor(
    readonly found: string,
    readonly accepted: string,
  ) {
    super(`${found} found; accepted: ${accepted}`);
  }
}
