import { FieldError, type FieldFault } from '../../../core/fault/index.ts';
import { say } from '../../../core/language/index.ts';

/** The fields that a call refuses, each in words; none where it accepts them. Any other error is thrown on. */
export function told(call: () => unknown): string[] {
  try {
    call();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    return [error, ...error.others].map(fault => say(fault as FieldFault));
  }
  return [];
}
