/**
 * A field that cannot be used, as data: which it is, what was found, what is accepted. Every room throws or returns
 * it in the same form; core/language puts it into words.
 */
export { accept, isAccepted, numberFound, textFound, tooLong } from './accept.ts';
export {
  type Accepted,
  type AcceptedRange,
  FieldError,
  type FieldFault,
  plainFault,
  throwFaults,
  type Where,
} from './field-error.ts';
