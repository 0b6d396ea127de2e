import { FieldError, type FieldFault } from '../../core/fault/index.ts';
import { faultsSentence, type Sentence } from '../../core/language/index.ts';
import { say } from '../host/index.ts';

/** The input is at fault, not the program: one plain line that names the file or option and the field. */
export class InputFault extends Error {
  override readonly name = 'InputFault';
}

/** Fields of `file` that cannot be used, as one line: the first, and how many more. */
export function faultOf(file: string, faults: readonly FieldFault[]): InputFault {
  const [first, ...others] = faults;
  return new InputFault(first ? `${file}: ${say(faultsSentence([first, ...others]))}` : file);
}

/** Asks the physics a question; a field it cannot use becomes a fault of `file`. */
export function asking<T>(file: string, question: () => T): T {
  try {
    return question();
  } catch (error) {
    throw error instanceof FieldError ? faultOf(file, [error, ...error.others]) : error;
  }
}

/** The answer itself, or the fault that `file` lacks what the question needs. */
export function answered<T extends { readonly ok: true }>(
  file: string,
  answer: T | { readonly ok: false; readonly needs: Sentence },
): T {
  if (answer.ok) return answer;
  throw lacking(file, answer.needs);
}

/** The fault that `file` lacks what the question needs, in words. */
export function lacking(file: string, needs: Sentence): InputFault {
  return new InputFault(`${file}: ${say({ key: 'calc.lacking', values: { needs } })}`);
}
