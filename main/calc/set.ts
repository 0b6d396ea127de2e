import { fieldsOf, inSi, USUAL } from '../../core/conditions/index.ts';
import {
  neededEdgeWorking,
  rankPairs,
  setRadius,
  setRadiusWorking,
  USUAL_COURSE,
} from '../../core/course/index.ts';
import type { TimedPair } from '../../core/line/index.ts';
import { type Ski, skiOf } from '../../core/pair/index.ts';
import { categories } from '../../core/rules/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { DEGREE } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { asking } from './fault.ts';
import { oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { askedWords, conditionsOf, type SetQuestion, setQuestion } from './set-question.ts';
import { quickestRanking, RUN_ASKED, ruleCheck } from './set-ranking.ts';
import { type Table, tableOf } from './table.ts';
import { NO_ADVICE, WALL_NOTE } from './turn-of.ts';
import { surfaceOf } from './turn-surface.ts';
import { allInWords, inWords } from './words.ts';
import { spokenWorth, worthRows } from './worth-rows.ts';

const ASKED = [
  ...fieldsOf('set', 'gates'),
  'courseSlopeDeg',
  'courseSpeedKmh',
  'courseEdgeMostDeg',
  'hardnessNPerMm3',
  ...RUN_ASKED,
] as const;

export const set: Command = {
  usage: 'PAIR…',
  summary: 'Which pair is the quickest through a set of gates, by how much, how surely, and why',
  conditions: ASKED,
  options: {
    course: { type: 'string' },
    'start-speed': { type: 'string' },
    turn: { type: 'string' },
    category: { type: 'string' },
  },
  notes:
    'Gates: --course FILE, a CSV with gate, across (m) and down (m), which may also state slope and speed; or a\n' +
    'rhythmic set by --spacing and --offset.\n' +
    'Times are those of the quickest run of each pair from --start-speed KMH. --speed KMH asks besides what edge and\n' +
    'grip that speed takes if it is kept all the way; it does not rank. What neither option nor file says is\n' +
    `assumed: ${assumedWords('SL')} for gates up to 15 m apart down the hill, else ${assumedWords('GS')}.\n` +
    `The greatest edge angle is ${USUAL.edgeMostDeg}° in the quickest run unless given.\n` +
    '--turn groove, or cosine for the cosine rule.\n' +
    `--category ${categories.join(', ')}: a pair that fails their rule check is timed and not picked.\n` +
    'Every ± is two standard uncertainties.\n' +
    WALL_NOTE,
  files: [1, Number.POSITIVE_INFINITY],
  async run({ files, options, said, read, note, progress }) {
    const pairs = await Promise.all(files.map(file => pairFrom(file, read, note)));
    const skis = pairs.map(skiOf);
    const { hardness } = inSi({ ...USUAL, ...said }, ['hardnessNPerMm3']);
    const course = await setQuestion(options, said, read);
    const { rhythm } = course;
    const turnBy = oneOf(options, 'turn', ['groove', 'cosine'] as const) ?? 'groove';
    const category =
      oneOf(options, 'category', categories) ?? categories.find(each => each === course.category) ?? null;
    const known = skis.map((ski, i) => {
      if (files.length > TOLD_FROM)
        progress(`${i + 1} of ${files.length}: bending ${ski.name} into the snow`);
      return surfaceOf(files[i], ski, hardness, turnBy);
    });
    const kept = asking(course.name, () =>
      rankPairs(
        skis.map((ski, i) => ({ name: ski.name, turn: known[i].turn, baseBevel: ski.baseBevel })),
        course.gates,
        conditionsOf(course.asked, said),
      ),
    );
    const checks = pairs.map(pair => ruleCheck(pair, course, category));
    const ranking = quickestRanking(
      pairs,
      known,
      checks,
      course,
      said,
      turnBy === 'cosine',
      tenths(progress),
    );
    const radius = rhythm
      ? setRadius(...rhythm)
      : Math.min(...kept.pairs[0].report.gates.map(gate => gate.neededRadius));
    const remarks = [
      ...disciplineRemarks(skis, course),
      ...new Set(checks.flatMap(check => (check?.verdict === 'fails' ? [allInWords(check.caution)] : []))),
    ];
    const order = [...ranking.pairs, ...ranking.untimed].map(({ index }) => index);
    const json = {
      setRadiusM: rounded(radius),
      pairs: order.map(index => {
        const { name, neededEdge, minHold, verdict } = kept.pairs.find(pair => pair.index === index)!;
        return {
          name,
          neededEdgeDeg: neededEdge === null ? null : rounded(neededEdge / DEGREE),
          minHoldDeg: rounded(minHold / DEGREE),
          ...timesOf(ranking.pairs.find(pair => pair.index === index)),
          verdict: inWords(verdict),
          turnRadius: known[index].source,
          rules: checks[index]?.verdict ?? null,
        };
      }),
      pick: ranking.pick === null ? null : skis[ranking.pick].name,
      because: allInWords(ranking.because),
      remarks,
      asked: course.asked,
    };
    const table = tableOf(
      json.pairs.map(({ worth: _, quickest, ...pair }) => ({ ...pair, ...quickest })),
      [
        { name: 'name' },
        { name: 'seconds' },
        { name: 'secondsPlusMinus' },
        { name: 'gapSeconds' },
        { name: 'gapPlusMinus' },
        { name: 'neededEdgeDeg', decimals: 1 },
        { name: 'minHoldDeg', decimals: 1 },
        { name: 'verdict' },
      ],
    );
    const title = `${course.gates.length} gates, ${rhythm ? 'set' : 'tightest'} radius ${radius.toFixed(2)} m`;
    return {
      json,
      tables: [{ title, ...table }, ...worthTable(json.pairs[0])],
      csv: table,
      words: [
        allInWords(ranking.because),
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

/** What the quickest run of a pair comes to; nothing where none was found. */
function timesOf(pair: TimedPair | undefined) {
  if (!pair) {
    return {
      seconds: null,
      secondsPlusMinus: null,
      gapSeconds: null,
      gapPlusMinus: null,
      quickest: null,
      worth: [],
    };
  }
  return {
    seconds: rounded(pair.seconds),
    secondsPlusMinus: rounded(pair.secondsPlusMinus),
    gapSeconds: rounded(pair.gap),
    gapPlusMinus: rounded(pair.gapPlusMinus),
    quickest: {
      peakEdgeDeg: rounded(pair.neededEdge / DEGREE),
      leastGripDeg: rounded(pair.leastGrip / DEGREE),
      peakLoadBodyWeights: rounded(pair.greatestLoad),
      legWorkJ: rounded(pair.legWork),
    },
    worth: worthRows({ ...pair.worth.inputs, startSpeed: pair.startSpeedWorth }, pair.skiWorths),
  };
}

function worthTable({ name, worth }: { name: string } & ReturnType<typeof timesOf>): Table[] {
  if (worth.length === 0) return [];
  const title = `What a change is worth to ${name} (negative is quicker)`;
  return [{ title, ...tableOf(spokenWorth(worth, 'in all')) }];
}

/** Tells every tenth of the way once. */
function tenths(progress: (text: string) => void): (share: number) => void {
  let last = 0;
  return share => {
    const tenth = Math.floor(10 * share);
    if (tenth > last) progress(`quickest runs: ${10 * tenth} %`);
    last = Math.max(last, tenth);
  };
}

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
