import { type Said, USUAL } from '../../core/conditions/index.ts';
import {
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
  readonly asked: Asked;
}

export interface Asked {
  readonly slopeDeg: number;
  readonly speedKmh: number;
  /** A pace kept all the way; else the speed at the start of a free run. */
  readonly speedKept: boolean;
  readonly greatestEdgeDeg: number;
  /** Of the quickest runs, whatever pace is asked about; 0 from rest. */
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
    asked: {
      slopeDeg: slopeDeg ?? usual.courseSlopeDeg,
      speedKmh: speedKmh ?? usual.courseSpeedKmh,
      speedKept: kept !== null || (start === null && (stated.keepSpeed ?? false)),
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

/** The question in words, since the pick stands and falls with it; what was assumed is named. */
export function askedWords(
  { slopeDeg, speedKmh, speedKept, startSpeedKmh, assumed }: Asked,
  profile: string | null = null,
): string {
  const given = (value: number) => Number(value.toFixed(1));
  const values = { slope: given(slopeDeg), profile: profile ?? '', start: given(startSpeedKmh) };
  const asked = t('calc.set.asked', {
    ...values,
    hill: profile === null ? 'even' : 'profile',
    from: startSpeedKmh === 0 ? 'rest' : 'speed',
  });
  const pace = speedKept ? ` ${t('calc.set.askedPace', { speed: given(speedKmh) })}` : '';
  if (assumed.length === 0) return asked + pace;
  const which = assumed.length > 1 ? 'both' : assumed[0];
  return `${asked}${pace} ${t('calc.set.assumed', { assumed: which })}`;
}
