import {
  type CourseConditions,
  type Gate,
  LineError,
  neededEdgeWorking,
  rankPairs,
  readGates,
  rhythmicSet,
  setDiscipline,
  setRadius,
  setRadiusWorking,
  usualConditions,
} from '../../core/course/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import type { Command, CommandInput } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { DEGREE, KMH, rounded } from './quantity.ts';
import { hardnessFrom } from './snow.ts';
import { NO_ADVICE, turnOf } from './turn-of.ts';

export const set: Command = {
  usage: 'PAIR…',
  summary: 'Which pair suits a set of gates, and why',
  options: {
    course: { type: 'string' },
    gates: { type: 'string' },
    spacing: { type: 'string' },
    offset: { type: 'string' },
    slope: { type: 'string' },
    snow: { type: 'string' },
    speed: { type: 'string' },
  },
  files: [1, Number.POSITIVE_INFINITY],
  async run({ files, options, read, progress }) {
    const skis = await Promise.all(files.map(file => skiFrom(file, read)));
    const hardness = hardnessFrom(options.snow);
    const course = await courseFrom(options, read);
    const known = skis.map((ski, i) => {
      if (files.length > TOLD_FROM)
        progress(`${i + 1} of ${files.length}: bending ${ski.name} into the snow`);
      return turnOf(files[i], ski, hardness);
    });
    const ranking = asking(course.name, () =>
      onLine(course.name, () =>
        rankPairs(
          skis.map((ski, i) => ({ name: ski.name, turn: known[i].turn, baseBevel: ski.baseBevel })),
          course.gates,
          conditions(options),
        ),
      ),
    );
    const radius = course.rhythm
      ? setRadius(...course.rhythm)
      : Math.min(...ranking.pairs[0].report.gates.map(gate => gate.neededRadius));
    const remarks = disciplineRemarks(skis, course);
    const json = {
      setRadiusM: rounded(radius),
      pairs: ranking.pairs.map(({ name, index, neededEdge, minHold, report, verdict }) => ({
        name,
        neededEdgeDeg: neededEdge === null ? null : rounded(neededEdge / DEGREE),
        minHoldDeg: rounded(minHold / DEGREE),
        seconds: rounded(report.seconds),
        verdict,
        turnRadius: known[index].source,
      })),
      pick: ranking.pick,
      because: ranking.because,
      remarks,
    };
    const table = {
      columns: [
        { name: 'name' },
        { name: 'neededEdgeDeg', decimals: 1 },
        { name: 'minHoldDeg', decimals: 1 },
        { name: 'seconds', decimals: 2 },
        { name: 'verdict' },
      ],
      rows: json.pairs.map(({ name, neededEdgeDeg, minHoldDeg, seconds, verdict }) => [
        name,
        neededEdgeDeg,
        minHoldDeg,
        seconds,
        verdict,
      ]),
    };
    const title = `${course.gates.length} gates, ${course.rhythm ? 'set' : 'tightest'} radius ${radius.toFixed(2)} m`;
    return {
      json,
      tables: [{ title, ...table }],
      csv: table,
      words: [
        ranking.because,
        asked(conditions(options)),
        ...remarks,
        ...known.map(({ words }) => words),
        NO_ADVICE,
      ].join('\n'),
      workings: course.rhythm
        ? [
            setRadiusWorking(...course.rhythm),
            ...skis.flatMap(ski => neededEdgeWorking(...course.rhythm, sidecut(ski).radius) ?? []),
          ]
        : [],
    };
  },
};

/** More pairs than this take long enough for a person to wonder. */
const TOLD_FROM = 4;

const SPOKEN = { SL: 'slalom', GS: 'giant slalom', SG: 'super-G', DH: 'downhill' } as const;

/** Every pair given is ranked; one of another discipline than the gates are set for is named. */
function disciplineRemarks(skis: readonly Ski[], { gates }: Course): string[] {
  const rhythm = setDiscipline(gates);
  return skis.flatMap(({ name, discipline }) =>
    discipline === 'other' || discipline === rhythm
      ? []
      : [`${name} is stated for ${SPOKEN[discipline]}; these gates are spaced as ${SPOKEN[rhythm]}.`],
  );
}

type Course = { readonly name: string; readonly gates: readonly Gate[] } & (
  | { readonly rhythm: readonly [spacing: number, offset: number] }
  | { readonly rhythm: null }
);

async function courseFrom(options: CommandInput['options'], read: CommandInput['read']): Promise<Course> {
  const { course } = options;
  if (typeof course === 'string') {
    const { gates, problems } = readGates(await read(course));
    if (problems.length > 0) {
      const [{ row, message }] = problems;
      throw new InputFault(`${course}: row ${row}: ${message}`);
    }
    return { name: course, gates, rhythm: null };
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
    rhythm: [spacing, offset],
  };
}

function conditions(options: CommandInput['options']): Partial<CourseConditions> {
  const slope = oneNumber(options, 'slope', { unit: 'degrees', from: 0, to: 60 });
  const speed = oneNumber(options, 'speed', { unit: 'km/h', from: 5, to: 150 });
  return {
    ...(slope !== null && { slope: slope * DEGREE }),
    // A speed that is named is the coach's "at 45 km/h?": it is kept all the way.
    ...(speed !== null && { startSpeed: speed * KMH, holdSpeed: true }),
  };
}

/** What was assumed of slope and speed, since the pick stands and falls with them. */
function asked(given: Partial<CourseConditions>): string {
  const { slope, startSpeed, holdSpeed } = { ...usualConditions, ...given };
  return (
    `Asked on a slope of ${Number((slope / DEGREE).toFixed(1))}° ` +
    (holdSpeed
      ? `at ${Number((startSpeed / KMH).toFixed(1))} km/h all the way (--slope, --speed).`
      : `from ${Number((startSpeed / KMH).toFixed(1))} km/h at the start, running free (--slope; --speed keeps one).`)
  );
}

function onLine<T>(name: string, question: () => T): T {
  try {
    return question();
  } catch (error) {
    if (error instanceof LineError) throw new InputFault(`${name}: ${error.message}`);
    throw error;
  }
}
