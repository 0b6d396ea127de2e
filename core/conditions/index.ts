/**
 * What is asked that is not a ski, said once: `CONDITIONS` is the table, `USUAL` what is taken where nobody says, `inSi`
 * the way into the formulas, `accept` the check of what arrives there.
 */
export { acceptConditions, faultIn } from './accept.ts';
export {
  type Field,
  type FieldOf,
  fieldsOf,
  type Group,
  isAccepted,
  reachOf,
  rowOf,
  type Said,
  USUAL,
} from './said.ts';
export { factorOf, inSi, type SiOf, type SiOfGroup, saidOf, siOf, unitSaid } from './si.ts';
export { CONDITIONS, type Condition } from './table.ts';
