/** The stated stiffness cannot be used; the message names the field, the value found and what is accepted. */
export class StiffnessError extends RangeError {
  override readonly name = 'StiffnessError';
  /** Path of the field in the pair file, for example `bending.newtonM2`. */
  readonly field: string;

  constructor(field: string, message: string) {
    super(`${field}: ${message}`);
    this.field = field;
  }
}
