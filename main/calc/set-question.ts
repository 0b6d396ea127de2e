import { type Said, USUAL } from '../../core/conditions/index.ts';
import {
  type CourseConditions,
  courseConditionsOf,
  type Gate,
  readGates,
  rhythmicSet,
  type SetStatement,
  setDiscipline,
  USUAL_COURSE,
} from '../../core/course/index.ts';
import type { CommandInput } from './command.ts';
import { rangeOf } from './condition-options.ts';
import { expectKind } from './expect-kind.ts';
import { faultOf, InputFault } from './fault.ts';
import { oneNumber } from './option.ts';
import { t } from './words.ts';

type Options = CommandInput['options'];

/** The gates a set command is about and what is asked of the pairs on them. */
export interface SetQuestion {
  readonly name: string;
  readonly gates: readonly Gate[];
  /** Spacing and offset where the set is rhythmic. */
  readonly rhythm: readonly [spacing: number, offset: number] | null;
  readonly discipline: 'SL' | 'GS';
  /** Who races, as the file of gates has it. */
  readonly category: string | null;
  /** Greatest edge angle of the skier, where an option or the file says; the usual one else. */
  readonly edgeMostDeg: number;
  readonly asked: Asked;
}

export interface Asked {
  readonly slopeDeg: number;
  readonly speedKmh: number;
  /** Kept all the way; else the speed at the start of a free run. */
  readonly speedKept: boolean;
  readonly greatestEdgeDeg: number;
  /** Of the quickest runs, whatever speed is kept. */
  readonly startSpeedKmh: number;
  /** What neither an option nor the file says. */
  readonly assumed: readonly ('slope' | 'speed')[];
}

/**
 * Gates and question from options, the course file, and for want of both the defaults.
 *
 * @throws InputFault naming the option, or the file and its row
 */
export async function setQuestion(
  options: Options,
  said: Partial<Said>,
  read: CommandInput['read'],
): Promise<SetQuestion> {
  const kept = said.courseSpeedKmh ?? null;
  const start = oneNumber(options, 'start-speed', rangeOf('courseSpeedKmh'));
  if (kept !== null && start !== null) {
    throw new InputFault(t('calc.set.startAndSpeed'));
  }
  const { stated, ...course } = await courseFrom(options, said, read);
  const discipline = stated.discipline ?? setDiscipline(course.gates);
  const usual = USUAL_COURSE[discipline];
  const slopeDeg = said.courseSlopeDeg ?? stated.slopeDeg ?? null;
  const speedKmh = kept ?? start ?? stated.speedKmh ?? null;
  return {
    ...course,
    discipline,
    category: stated.category ?? null,
    edgeMostDeg: said.courseEdgeMostDeg ?? stated.greatestEdgeDeg ?? USUAL.edgeMostDeg,
    asked: {
      slopeDeg: slopeDeg ?? usual.courseSlopeDeg,
      speedKmh: speedKmh ?? usual.courseSpeedKmh,
      speedKept: kept !== null || (start === null && (stated.keepSpeed ?? true)),
      greatestEdgeDeg: said.courseEdgeMostDeg ?? stated.greatestEdgeDeg ?? USUAL.courseEdgeMostDeg,
      startSpeedKmh: start ?? (stated.keepSpeed === false ? stated.speedKmh : null) ?? usual.courseSpeedKmh,
      assumed: [
        ...(slopeDeg === null ? (['slope'] as const) : []),
        ...(speedKmh === null ? (['speed'] as const) : []),
      ],
    },
  };
}

type Named = Pick<SetQuestion, 'name' | 'gates' | 'rhythm'> & { readonly stated: SetStatement };

async function courseFrom(options: Options, said: Partial<Said>, read: CommandInput['read']): Promise<Named> {
  const { course } = options;
  if (typeof course === 'string') {
    const rhythm = ['gates', 'spacing', 'offset'].find(name => options[name] !== undefined);
    if (rhythm !== undefined) {
      throw new InputFault(t('calc.set.rhythmAndCourse', { option: rhythm }));
    }
    const { gates, stated, problems } = readGates(expectKind(course, await read(course), 'gates'));
    if (problems.length > 0) {
      const [{ row, ...fault }] = problems;
      throw faultOf(course, [{ ...fault, where: { row } }]);
    }
    return { name: course, gates, stated, rhythm: null };
  }
  const { gates = USUAL.gates, gateSpacingM: spacing, gateOffsetM: offset } = said;
  if (spacing === undefined || offset === undefined) {
    const option = spacing === undefined ? '--spacing' : '--offset';
    throw new InputFault(t('calc.set.gatesMissing', { option }));
  }
  if (offset === 0) throw new InputFault(t('calc.set.noOffset'));
  return {
    name: '--spacing, --offset',
    gates: rhythmicSet(gates, spacing, offset),
    stated: {},
    rhythm: [spacing, offset],
  };
}

/** The question in SI, as the course asks it. */
export const conditionsOf = (
  { slopeDeg, speedKmh, speedKept, greatestEdgeDeg }: Asked,
  said: Partial<Said>,
): CourseConditions =>
  courseConditionsOf(
    { ...said, courseSlopeDeg: slopeDeg, courseSpeedKmh: speedKmh, courseEdgeMostDeg: greatestEdgeDeg },
    speedKept,
  );

/** The question in words, since the pick stands and falls with it; what was assumed is named. */
export function askedWords({ slopeDeg, speedKmh, speedKept, startSpeedKmh, assumed }: Asked): string {
  const given = (value: number) => Number(value.toFixed(1));
  const values = { slope: given(slopeDeg), speed: given(speedKmh) };
  const asked = speedKept
    ? t('calc.set.askedKept', { ...values, start: given(startSpeedKmh) })
    : t('calc.set.askedFree', values);
  if (assumed.length === 0) return asked;
  const which = assumed.length > 1 ? 'both' : assumed[0];
  return `${asked} ${t('calc.set.assumed', { assumed: which })}`;
}
