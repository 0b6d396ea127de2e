import { FieldError } from '../fault/index.ts';
import type { MeasuringUncertainty } from '../shape/index.ts';
import {
  type ControlReading,
  type ControlResult,
  controlRadius,
  controlStations,
  controlVerdict,
  threeReadingAllowance,
} from './control-radius.ts';
import { rulebookUncertainty } from './rulebook-uncertainty.ts';

/** What the readings of one pair come to at a radius limit, lengths in metres. */
export interface ControlFinding {
  /** Which readings the radius compared is of. */
  readonly used: 'first reading' | 'three readings';
  /** One radius a complete reading, used or not. */
  readonly radii: readonly number[];
  /** The first reading, or the allowance times the mean of the three. */
  readonly compared: number;
  readonly plusMinus: number;
  /** How the procedure ends; null where there is no least radius. */
  readonly procedure: ControlResult['verdict'] | null;
  readonly note: string;
}

/**
 * The control procedure carried as far as the readings go: the first alone while it is at or over `least`,
 * or while the two that follow a smaller one are not complete. The uncertainty of the mean stays that of one
 * reading: one tape and one caliper read all three, and their own error does not average out.
 *
 * `readings` one to three; `least` the radius limit, m. `RangeError` when there is no reading.
 */
export function controlFinding(
  readings: readonly ControlReading[],
  uncertainty: MeasuringUncertainty,
  least: number | undefined,
): ControlFinding {
  if (readings.length === 0) {
    throw new FieldError({ field: 'readings', found: undefined, accepted: { from: 1, to: 3 } });
  }
  const radii = readings.map(controlRadius);
  const three = readings.length === 3 && least !== undefined && radii[0] < least;
  const used = three ? readings : readings.slice(0, 1);
  const { verdict, compared } = controlVerdict(used, least ?? 0);
  const errors = used.map(reading => readingUncertainty(reading, uncertainty));
  const error = errors.reduce((sum, each) => sum + each, 0) / errors.length;
  return {
    used: three ? 'three readings' : 'first reading',
    radii,
    compared,
    plusMinus: three ? threeReadingAllowance * error : error,
    procedure: least === undefined ? null : verdict,
    note: `from the control stations at 80 % and 90 %${ending(radii, verdict, compared, least)}`,
  };
}

/** How the procedure ended, or how it goes on, as the rest of a sentence. */
function ending(
  radii: readonly number[],
  verdict: ControlResult['verdict'],
  compared: number,
  least: number | undefined,
): string {
  if (least === undefined || radii[0] >= least) {
    return radii.length > 1 ? '; the first reading is enough, so those after it are not used' : '';
  }
  if (verdict !== 'two more readings needed') {
    // Rounded down where it is refused, so that 29.999 m does not read as the limit itself.
    const shown = verdict === 'refused' ? Math.floor(100 * compared) / 100 : compared;
    return (
      `: readings of ${radii.map(metres).join(', ')} m have a mean of ${metres(compared / threeReadingAllowance)} m, ` +
      `and ${threeReadingAllowance} times it, ${metres(shown)} m, is ${verdict} at a limit of ${least} m`
    );
  }
  const decides = `${threeReadingAllowance} times the mean of the three decides`;
  const enough = (3 * least) / threeReadingAllowance;
  return radii.length === 1
    ? `; this first reading is under ${least} m, so two more are taken and ${decides}: their mean must be at least ` +
        `${atLeast(enough / 3)} m`
    : `; readings of ${radii.map(metres).join(' and ')} m, the first under ${least} m, so one more is taken and ` +
        `${decides}: the third must be at least ${atLeast(enough - radii[0] - radii[1])} m`;
}

function readingUncertainty(reading: ControlReading, uncertainty: MeasuringUncertainty): number {
  const { developedLength, tailToWaist, frontWidth, rearWidth, waistWidth } = reading;
  const { distance } = controlStations(developedLength, tailToWaist);
  return rulebookUncertainty(distance, frontWidth, rearWidth, waistWidth, uncertainty);
}

const metres = (radius: number): string => radius.toFixed(2);

/** To the centimetre above: what is read to be enough is enough. */
const atLeast = (radius: number): string => (Math.ceil(100 * radius - 1e-7) / 100).toFixed(2);
