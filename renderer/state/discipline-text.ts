import type { Pair } from '../../core/pair/index.ts';
import { t } from './words.ts';

/** What a pair may be made for, as its file writes it. */
export const DISCIPLINES = ['SL', 'GS', 'SG', 'DH', 'other'] as const satisfies readonly Pair['discipline'][];

/** What a pair is for, where room is short: the trade's letters; "other" where its file does not say. */
export const disciplineText = (discipline: Pair['discipline']): string =>
  discipline === undefined || discipline === 'other' ? t('discipline.other') : discipline;
