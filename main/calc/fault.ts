import { FieldError } from '../../core/fault/index.ts';
import { faultsSentence, say } from '../../core/language/index.ts';

/** The input is at fault, not the program: one plain line that names the file or option and the field. */
export class InputFault extends Error {
  override readonly name = 'InputFault';
}

/** A range error of ours names the field before a colon; the language's own do not. */
const namesField = /^[\w.[\] -]+: /;

/** Asks the physics a question; a field it cannot use becomes a fault of `file`. */
export function asking<T>(file: string, question: () => T): T {
  try {
    return question();
  } catch (error) {
    if (error instanceof FieldError) {
      throw new InputFault(`${file}: ${say(faultsSentence([error, ...error.others]))}`);
    }
    if (error instanceof RangeError && namesField.test(error.message)) {
      throw new InputFault(`${file}: ${error.message}`);
    }
    throw error;
  }
}

/** The answer itself, or the fault that `file` lacks what the question needs. */
export function answered<T extends { readonly ok: true }>(
  file: string,
  answer: T | { readonly ok: false; readonly needs: string },
): T {
  if (answer.ok) return answer;
  throw lacking(file, answer.needs);
}

/** The fault that `file` lacks what the question needs, in words. */
export function lacking(file: string, needs: string): InputFault {
  return new InputFault(`${file}: this question needs ${needs}, and the pair gives none`);
}
