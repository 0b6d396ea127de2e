import {
  type CheckItem,
  editionText,
  type LimitedQuantity,
  type LimitVerdict,
  limitedQuantity,
} from '../../core/rules/index.ts';
import { formatQuantity, type MeasureName, type System, shownAs } from '../../core/units/index.ts';
import { inWords, t } from '../state/index.ts';

const MEASURES: Record<LimitedQuantity, MeasureName> = {
  lengthMm: 'lengthMm',
  radiusM: 'radius',
  waistWidthMm: 'widthMm',
  frontWidthMm: 'widthMm',
  standingHeightMm: 'widthMm',
  bootSoleMm: 'widthMm',
};

/** Decimals of the place where an uncertainty has its first figure. */
function supported(uncertainty: number): number {
  return Math.max(0, -Math.floor(Math.log10(Number(uncertainty.toPrecision(1)))));
}

/** What was found, ± its measuring uncertainty, which keeps one figure: a tape reads whole millimetres. */
export function foundText(item: CheckItem, system: System): string {
  if (item.found === null) return t('common.notGiven');
  const measure = MEASURES[item.quantity];
  const { plusMinus } = item;
  const known = plusMinus !== null && plusMinus > 0 && Number.isFinite(plusMinus);
  return formatQuantity(item.found, measure, {
    system,
    uncertainty: plusMinus ?? undefined,
    ...(known ? { decimals: supported(plusMinus * shownAs(measure, system).factor) } : {}),
  }).text;
}

/** What a rule limits. Whether at least or at most stands beside it, in the limit. */
export const limitedText = (item: CheckItem): string => inWords(limitedQuantity(item));

/** Where the limits come from, the rules of one source together. */
export function sourcesText(items: readonly CheckItem[]): string {
  const bySource = new Map<string, string[]>();
  for (const item of items) {
    const rules = bySource.get(item.source) ?? [];
    bySource.set(item.source, [...rules, limitedText(item)]);
  }
  return [...bySource]
    .map(([source, rules]) => t('rules.sourceOf', { rules, source: editionText(source) }))
    .join('; ');
}

/** The limit as the edition words it; in imperial its converted ends follow. */
export function limitText(item: CheckItem, system: System): string {
  const limit = inWords(item.limit);
  if (system === 'metric') return limit;
  const ends = [item.least, item.most]
    .filter(value => value !== null)
    .map(value => formatQuantity(value, MEASURES[item.quantity], { system }));
  if (ends.length === 0) return limit;
  const to = ends.at(-1)!.text;
  const converted = ends.length > 1 ? t('rules.limitRange', { from: ends[0]!.value, to }) : to;
  return t('rules.limitIn', { limit, converted });
}

export const verdictText = (verdict: LimitVerdict): string => t(`rules.verdict.${verdict}`);

/** How well a limit is established. */
export const statusText = (status: CheckItem['status']): string => t(`rules.status.${status}`);
