import { type Conditions, changeConditions } from '../../state/index.ts';

/** A control's setter of one condition; a drag is one undo step. */
export const setCondition = (label: string, key: keyof Conditions) => (value: number) =>
  changeConditions(label, { [key]: value }, key);
