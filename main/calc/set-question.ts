import {
  type CourseConditions,
  type Gate,
  readGates,
  rhythmicSet,
  type SetStatement,
  setDiscipline,
  usualConditions,
} from '../../core/course/index.ts';
import type { CommandInput } from './command.ts';
import { expectKind } from './expect-kind.ts';
import { faultOf, InputFault } from './fault.ts';
import { oneNumber, type Range } from './option.ts';
import { DEGREE, KMH } from './quantity.ts';
import { SLOPE } from './ranges.ts';

const SPEED: Range = { unit: 'km/h', from: 5, to: 150 };

type Options = CommandInput['options'];

/** The gates a set command is about and what is asked of the pairs on them. */
export interface SetQuestion {
  readonly name: string;
  readonly gates: readonly Gate[];
  /** Spacing and offset where the set is rhythmic. */
  readonly rhythm: readonly [spacing: number, offset: number] | null;
  readonly discipline: 'SL' | 'GS';
  readonly asked: Asked;
}

export interface Asked {
  readonly slopeDeg: number;
  readonly speedKmh: number;
  /** Kept all the way; else the speed at the start of a free run. */
  readonly speedKept: boolean;
  readonly greatestEdgeDeg: number;
  /** What neither an option nor the file says. */
  readonly assumed: readonly ('slope' | 'speed')[];
}

/** Where nobody says: the slope and the speed, kept all the way, that juniors know from gates so spaced. */
export const ASSUMED = {
  SL: { slopeDeg: 20, speedKmh: 30 },
  GS: { slopeDeg: 16.5, speedKmh: 50 },
} as const;

/**
 * Gates and question from options, the course file, and for want of both the defaults.
 *
 * @throws InputFault naming the option, or the file and its row
 */
export async function setQuestion(options: Options, read: CommandInput['read']): Promise<SetQuestion> {
  const slope = oneNumber(options, 'slope', SLOPE);
  const kept = oneNumber(options, 'speed', SPEED);
  const start = oneNumber(options, 'start-speed', SPEED);
  if (kept !== null && start !== null) {
    throw new InputFault(
      '--start-speed: not together with --speed; one is kept, the other only the speed at the start',
    );
  }
  const { stated, ...course } = await courseFrom(options, read);
  const discipline = stated.discipline ?? setDiscipline(course.gates);
  const usual = ASSUMED[discipline];
  const slopeDeg = slope ?? stated.slopeDeg ?? null;
  const speedKmh = kept ?? start ?? stated.speedKmh ?? null;
  return {
    ...course,
    discipline,
    asked: {
      slopeDeg: slopeDeg ?? usual.slopeDeg,
      speedKmh: speedKmh ?? usual.speedKmh,
      speedKept: kept !== null || (start === null && (stated.keepSpeed ?? true)),
      greatestEdgeDeg: stated.greatestEdgeDeg ?? Number((usualConditions.greatestEdge / DEGREE).toFixed(6)),
      assumed: [
        ...(slopeDeg === null ? (['slope'] as const) : []),
        ...(speedKmh === null ? (['speed'] as const) : []),
      ],
    },
  };
}

type Named = Pick<SetQuestion, 'name' | 'gates' | 'rhythm'> & { readonly stated: SetStatement };

async function courseFrom(options: Options, read: CommandInput['read']): Promise<Named> {
  const { course } = options;
  if (typeof course === 'string') {
    const rhythm = ['gates', 'spacing', 'offset'].find(name => options[name] !== undefined);
    if (rhythm !== undefined) {
      throw new InputFault(`--${rhythm}: not together with --course, whose file has its own gates`);
    }
    const { gates, stated, problems } = readGates(expectKind(course, await read(course), 'gates'));
    if (problems.length > 0) {
      const [{ row, ...fault }] = problems;
      throw faultOf(course, [{ ...fault, where: { row } }]);
    }
    return { name: course, gates, stated, rhythm: null };
  }
  const count = oneNumber(options, 'gates', { unit: 'gates', from: 2, to: 200, whole: true }, 10);
  const spacing = oneNumber(options, 'spacing', { unit: 'm', from: 2, to: 80 });
  const offset = oneNumber(options, 'offset', { unit: 'm', from: 0.1, to: 40 });
  if (spacing === null || offset === null) {
    const missing = spacing === null ? '--spacing' : '--offset';
    throw new InputFault(`${missing}: is missing; give --course FILE, or --spacing and --offset in m`);
  }
  return {
    name: '--spacing, --offset',
    gates: rhythmicSet(count, spacing, offset),
    stated: {},
    rhythm: [spacing, offset],
  };
}

/** The question in SI, as the course asks it. */
export function conditionsOf({
  slopeDeg,
  speedKmh,
  speedKept,
  greatestEdgeDeg,
}: Asked): Partial<CourseConditions> {
  return {
    slope: slopeDeg * DEGREE,
    startSpeed: speedKmh * KMH,
    holdSpeed: speedKept,
    greatestEdge: greatestEdgeDeg * DEGREE,
  };
}

/** The question in words, since the pick stands and falls with it; what was assumed is named. */
export function askedWords({ slopeDeg, speedKmh, speedKept, assumed }: Asked): string {
  const given = (value: number) => Number(value.toFixed(1));
  const speed = speedKept
    ? `at ${given(speedKmh)} km/h kept all the way`
    : `from ${given(speedKmh)} km/h at the start, running free`;
  const options = assumed.map(name => (name === 'speed' ? '--speed or --start-speed' : `--${name}`));
  return (
    `Asked on a slope of ${given(slopeDeg)}° ${speed}.` +
    (assumed.length > 0
      ? ` The ${assumed.join(' and the ')} ${assumed.length > 1 ? 'are' : 'is'} assumed; say otherwise with ${options.join(' and ')}.`
      : '')
  );
}
