/** The stated stiffness cannot be used: which field of the pair file, what was found and what is accepted. */
export class StiffnessError extends RangeError {
  override readonly name = 'StiffnessError';

  constructor(
    /** Path of the field in the pair file, for example `bending.newtonM2`. */
    readonly field: string,
    readonly found: string,
    readonly accepted: string,
  ) {
    super(`${field}: ${found} found; accepted: ${accepted}`);
  }
}
