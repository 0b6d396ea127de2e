import type { CheckItem, LimitedQuantity } from '../../../core/rules/index.ts';
import { formatQuantity, type MeasureName, type System } from '../../format/index.ts';

const MEASURES: Record<LimitedQuantity, MeasureName> = {
  lengthMm: 'lengthMm',
  radiusM: 'radius',
  waistWidthMm: 'widthMm',
  frontWidthMm: 'widthMm',
  standingHeightMm: 'widthMm',
  bootSoleMm: 'widthMm',
};

/** What was found, ± its measuring uncertainty. */
export function foundText(item: CheckItem, system: System): string {
  if (item.found === null) return 'not given';
  return formatQuantity(item.found, MEASURES[item.quantity], {
    system,
    uncertainty: item.plusMinus ?? undefined,
  }).text;
}

/** The limit as the edition words it; in imperial its converted value follows. */
export function limitText(item: CheckItem, system: System): string {
  if (system === 'metric') return item.limit;
  const value = item.least ?? item.most;
  if (value === null) return item.limit;
  return `${item.limit} (${formatQuantity(value, MEASURES[item.quantity], { system }).text})`;
}
