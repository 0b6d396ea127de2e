import type { Pair } from '../../../core/pair/index.ts';
import type { StatedControl } from '../../../core/rules/index.ts';

/** What the pair file accepts for each reading alone, mm. */
const RANGES = {
  developedLengthMm: [600, 2500],
  tailToWaistMm: [80, 2000],
  frontWidthMm: [40, 250],
  rearWidthMm: [40, 250],
  waistWidthMm: [30, 200],
} as const satisfies Record<keyof StatedControl, readonly [number, number]>;

const STEP = 0.1;

/** What is accepted for a reading beside the others: the waist lies on the ski and is the narrowest. */
export function controlRange(
  control: StatedControl | undefined,
  field: keyof StatedControl,
): readonly [least: number, most: number] {
  const [least, most] = RANGES[field];
  const { developedLengthMm, tailToWaistMm, frontWidthMm, rearWidthMm, waistWidthMm } = control ?? {};
  switch (field) {
    case 'developedLengthMm':
      return [Math.max(least, (tailToWaistMm ?? 0) + 1), most];
    case 'tailToWaistMm':
      return [least, Math.min(most, (developedLengthMm ?? Number.POSITIVE_INFINITY) - 1)];
    case 'frontWidthMm':
    case 'rearWidthMm':
      return [Math.max(least, (waistWidthMm ?? 0) + STEP), most];
    case 'waistWidthMm': {
      const narrower = Math.min(
        frontWidthMm ?? Number.POSITIVE_INFINITY,
        rearWidthMm ?? Number.POSITIVE_INFINITY,
      );
      return [least, Math.min(most, narrower - STEP)];
    }
  }
}

/** The change of a pair that gives it a reading, or takes one away; with the last one the group goes too. */
export function withReading(
  pair: Pair,
  field: keyof StatedControl,
  value: number | undefined,
): Pick<Pair, 'control'> {
  const { [field]: _before, ...others } = pair.control ?? {};
  const control = value === undefined ? others : { ...others, [field]: value };
  return { control: Object.keys(control).length > 0 ? control : undefined };
}
