import type { Pair } from '../../core/pair/index.ts';
import { checkPair, type Discipline, type PairCheck } from '../../core/rules/index.ts';
import { category, edition, lowerLevel } from './edition.ts';

/** A pair by the edition, category and level of race chosen; by its own discipline unless one is given. */
export const checkOf = (pair: Pair, discipline?: Discipline): PairCheck =>
  checkPair(pair, {
    category: category.value,
    discipline,
    edition: edition.value,
    lowerLevel: lowerLevel.value,
  });
