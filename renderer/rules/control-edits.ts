import type { Pair } from '../../core/pair/index.ts';
import { type StatedReading, statedReading } from '../../core/rules/index.ts';

/** What the pair file accepts for each measurement alone, mm. */
const RANGES = {
  developedLengthMm: [600, 2500],
  tailToWaistMm: [80, 2000],
  frontWidthMm: [40, 250],
  rearWidthMm: [40, 250],
  waistWidthMm: [30, 200],
} as const satisfies Record<keyof StatedReading, readonly [number, number]>;

const STEP = 0.1;

/** What is accepted for one measurement of a reading beside the others: the waist lies on the ski and is the narrowest. */
export function controlRange(
  reading: StatedReading | undefined,
  field: keyof StatedReading,
): readonly [least: number, most: number] {
  const [least, most] = RANGES[field];
  const { developedLengthMm, tailToWaistMm, frontWidthMm, rearWidthMm, waistWidthMm } = reading ?? {};
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

/**
 * The change of a pair that gives one of its readings (0 the first) a measurement, or takes one away. What is
 * left empty at the end goes: a reading after the first, the list of them, the whole group.
 */
export function withReading(
  pair: Pair,
  nth: number,
  field: keyof StatedReading,
  value: number | undefined,
): Pick<Pair, 'control'> {
  const put = (reading: StatedReading | undefined): StatedReading => {
    const { [field]: _before, ...others } = reading ?? {};
    return value === undefined ? others : { ...others, [field]: value };
  };
  const { repeats: listed = [], ...first } = pair.control ?? {};
  const changed: StatedReading = nth === 0 ? put(first) : first;
  const repeats: StatedReading[] = [...listed];
  if (nth > 0) {
    while (repeats.length < nth) repeats.push({});
    repeats[nth - 1] = put(statedReading(pair.control, nth));
  }
  while (repeats.length > 0 && Object.keys(repeats[repeats.length - 1]).length === 0) repeats.pop();
  const control: Record<string, unknown> = { ...changed, ...(repeats.length > 0 && { repeats }) };
  return { control: Object.keys(control).length > 0 ? control : undefined };
}
