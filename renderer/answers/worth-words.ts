import type { ChangeWorth } from '../../core/line/index.ts';
import { decimal } from '../../core/units/index.ts';
import { t } from '../state/index.ts';

const UNIT = {
  'body weights': 'worth.unit.bodyWeights',
  'body weights/s': 'worth.unit.bodyWeightRate',
} as const;

export const inputName = ({ input }: Pick<ChangeWorth, 'input'>): string => t(`worth.${input}`);

/** "+0.2 body weights", "−0.05 m". */
export function changeText({ change, unit }: Pick<ChangeWorth, 'change' | 'unit'>): string {
  const known = unit in UNIT ? UNIT[unit as keyof typeof UNIT] : null;
  const digits = Math.abs(change) >= 1 ? 0 : Math.abs(change) < 0.01 ? 3 : Math.abs(change) < 0.1 ? 2 : 1;
  const amount = `${change < 0 ? '−' : '+'}${decimal(Math.abs(change), digits)}`;
  return known ? t(known, { amount }) : unit ? `${amount} ${unit}` : amount;
}
