import { FieldError } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
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
  readonly note: Sentence;
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
    note: noteOf(radii, verdict, compared, least),
  };
}

/** Where the radius was read, and how the procedure ended or goes on. */
function noteOf(
  radii: readonly number[],
  verdict: ControlResult['verdict'],
  compared: number,
  limit: number | undefined,
): Sentence {
  const [first, second] = radii;
  if (limit === undefined || first >= limit) {
    return { key: radii.length > 1 ? 'rules.note.firstEnough' : 'rules.note.controlStations' };
  }
  const allowance = threeReadingAllowance;
  if (verdict === 'accepted' || verdict === 'refused') {
    // Rounded down where it is refused, so that 29.999 m does not read as the limit itself.
    const shown = verdict === 'refused' ? Math.floor(100 * compared) / 100 : compared;
    const values = { verdict, allowance, limit, readings: radii.map(metres), compared: metres(shown) };
    return { key: 'rules.note.decided', values: { ...values, mean: metres(compared / allowance) } };
  }
  const enough = (3 * limit) / allowance;
  return second === undefined
    ? { key: 'rules.note.twoMore', values: { limit, allowance, mean: atLeast(enough / 3) } }
    : {
        key: 'rules.note.oneMore',
        values: {
          first: metres(first),
          second: metres(second),
          limit,
          allowance,
          third: atLeast(enough - first - second),
        },
      };
}

function readingUncertainty(reading: ControlReading, uncertainty: MeasuringUncertainty): number {
  const { developedLength, tailToWaist, frontWidth, rearWidth, waistWidth } = reading;
  const { distance } = controlStations(developedLength, tailToWaist);
  return rulebookUncertainty(distance, frontWidth, rearWidth, waistWidth, uncertainty);
}

const metres = (radius: number): string => radius.toFixed(2);

/** To the centimetre above: what is read to be enough is enough. */
const atLeast = (radius: number): string => (Math.ceil(100 * radius - 1e-7) / 100).toFixed(2);
