import { fieldsOf, inSi, USUAL } from '../../core/conditions/index.ts';
import {
  neededEdgeWorking,
  rankPairs,
  setRadius,
  setRadiusWorking,
  USUAL_COURSE,
} from '../../core/course/index.ts';
import type { Ski } from '../../core/pair/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { DEGREE } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { asking } from './fault.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { askedWords, conditionsOf, type SetQuestion, setQuestion } from './set-question.ts';
import { tableOf } from './table.ts';
import { NO_ADVICE, turnOf } from './turn-of.ts';
import { told, toldAll } from './words.ts';

const ASKED = [
  ...fieldsOf('set', 'gates'),
  'courseSlopeDeg',
  'courseSpeedKmh',
  'courseEdgeMostDeg',
  'hardnessNPerMm3',
  'massKg',
  'friction',
  'dragAreaM2',
  'airDensity',
  'outerShare',
] as const;

export const set: Command = {
  usage: 'PAIR…',
  summary: 'Which pair suits a set of gates, and why',
  conditions: ASKED,
  options: { course: { type: 'string' }, 'start-speed': { type: 'string' } },
  notes:
    'Gates: --course FILE, a CSV with gate, across (m) and down (m), which may also state slope and speed; or a\n' +
    'rhythmic set by --spacing and --offset.\n' +
    '--speed KMH is kept all the way; --start-speed KMH runs free from it. What neither option nor file says is\n' +
    `assumed: ${assumedWords('SL')} for gates up to 15 m apart down the hill, else ${assumedWords('GS')}.`,
  files: [1, Number.POSITIVE_INFINITY],
  async run({ files, options, said, read, note, progress }) {
    const skis = await Promise.all(files.map(file => skiFrom(file, read, note)));
    const { hardness } = inSi({ ...USUAL, ...said }, ['hardnessNPerMm3']);
    const course = await setQuestion(options, said, read);
    const { rhythm } = course;
    const known = skis.map((ski, i) => {
      if (files.length > TOLD_FROM)
        progress(`${i + 1} of ${files.length}: bending ${ski.name} into the snow`);
      return turnOf(files[i], ski, hardness);
    });
    const ranking = asking(course.name, () =>
      rankPairs(
        skis.map((ski, i) => ({ name: ski.name, turn: known[i].turn, baseBevel: ski.baseBevel })),
        course.gates,
        conditionsOf(course.asked, said),
      ),
    );
    const radius = rhythm
      ? setRadius(...rhythm)
      : Math.min(...ranking.pairs[0].report.gates.map(gate => gate.neededRadius));
    const remarks = disciplineRemarks(skis, course);
    const json = {
      setRadiusM: rounded(radius),
      pairs: ranking.pairs.map(({ name, index, neededEdge, minHold, report, verdict }) => ({
        name,
        neededEdgeDeg: neededEdge === null ? null : rounded(neededEdge / DEGREE),
        minHoldDeg: rounded(minHold / DEGREE),
        seconds: rounded(report.seconds),
        verdict: told(verdict),
        turnRadius: known[index].source,
      })),
      pick: ranking.pick,
      because: toldAll(ranking.because),
      remarks,
      asked: course.asked,
    };
    const table = tableOf(json.pairs, [
      { name: 'name' },
      { name: 'neededEdgeDeg', decimals: 1 },
      { name: 'minHoldDeg', decimals: 1 },
      { name: 'seconds' },
      { name: 'verdict' },
    ]);
    const title = `${course.gates.length} gates, ${rhythm ? 'set' : 'tightest'} radius ${radius.toFixed(2)} m`;
    return {
      json,
      tables: [{ title, ...table }],
      csv: table,
      words: [
        toldAll(ranking.because),
        askedWords(course.asked),
        ...remarks,
        ...known.map(({ words }) => words),
        NO_ADVICE,
      ].join('\n'),
      workings: rhythm
        ? [
            setRadiusWorking(...rhythm),
            ...skis.flatMap(ski => neededEdgeWorking(...rhythm, sidecut(ski).radius) ?? []),
          ]
        : [],
    };
  },
};

function assumedWords(discipline: 'SL' | 'GS'): string {
  const { courseSlopeDeg, courseSpeedKmh } = USUAL_COURSE[discipline];
  return `${courseSpeedKmh} km/h kept on ${courseSlopeDeg}°`;
}

/** More pairs than this take long enough for a person to wonder. */
const TOLD_FROM = 4;

const SPOKEN = { SL: 'slalom', GS: 'giant slalom', SG: 'super-G', DH: 'downhill' } as const;

/** Every pair given is ranked; one of another discipline than the gates are set for is named. */
function disciplineRemarks(skis: readonly Ski[], set: SetQuestion): string[] {
  return skis.flatMap(({ name, discipline }) =>
    discipline === 'other' || discipline === set.discipline
      ? []
      : [`${name} is stated for ${SPOKEN[discipline]}; these gates are taken as ${SPOKEN[set.discipline]}.`],
  );
}
