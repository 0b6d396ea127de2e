/** The input is at fault, not the program: one plain line that names the file or option and the field. */
export class InputFault extends Error {
  override readonly name = 'InputFault';
}
