import { fieldsOf, inSi, USUAL } from '../../core/conditions/index.ts';
import { neededEdgeWorking, setRadius, setRadiusWorking, USUAL_COURSE } from '../../core/course/index.ts';
import type { Sentence } from '../../core/language/index.ts';
import { gateReadings, heldBackSentence, runFailureSentence, type TimedPair } from '../../core/line/index.ts';
import { type Ski, skiOf } from '../../core/pair/index.ts';
import { categories } from '../../core/rules/index.ts';
import { evenSlope, readProfile } from '../../core/run/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { DEGREE } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { expectKind } from './expect-kind.ts';
import { asking } from './fault.ts';
import { oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { askedWords, type SetQuestion, setQuestion } from './set-question.ts';
import { quickestRanking, RUN_ASKED, ruleCheck } from './set-ranking.ts';
import { type Table, tableOf } from './table.ts';
import { surfaceOf } from './turn-surface.ts';
import { t, told, toldAll } from './words.ts';
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
  usage: 'calc.usage.pairs',
  summary: 'calc.set.summary',
  conditions: ASKED,
  options: {
    course: { type: 'string' },
    profile: { type: 'string' },
    'start-speed': { type: 'string' },
    turn: { type: 'string' },
    category: { type: 'string' },
  },
  notes: {
    key: 'calc.set.notes',
    values: {
      slalom: usualOf('SL'),
      giantSlalom: usualOf('GS'),
      categories: categories.join(', '),
      wall: { key: 'calc.wallNote' },
    },
  },
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
    const profile =
      typeof options.profile === 'string'
        ? readProfileFile(options.profile, await read(options.profile))
        : asking('--slope', () => evenSlope(course.asked.slopeDeg * DEGREE));
    const known = skis.map((ski, i) => {
      if (files.length > TOLD_FROM)
        progress(t('calc.set.bending', { nth: i + 1, count: files.length, name: ski.name }));
      return surfaceOf(files[i], ski, hardness, turnBy);
    });
    const checks = pairs.map(pair => ruleCheck(pair, course, category));
    const { ranking, atPace } = quickestRanking(
      pairs,
      known,
      checks,
      course,
      profile,
      said,
      turnBy === 'cosine',
      tenths(progress),
    );
    const best = ranking.pairs[0];
    const radius = rhythm
      ? setRadius(...rhythm)
      : best && Math.min(...gateReadings(best.run.run, best.run.poleNodes).map(gate => gate.radius));
    const remarks = [
      ...disciplineRemarks(skis, course),
      ...new Set(checks.flatMap(check => (check?.verdict === 'fails' ? [toldAll(check.caution)] : []))),
    ];
    const order = [...ranking.pairs, ...ranking.untimed, ...ranking.byRhythmAlone].map(({ index }) => index);
    const json = {
      setRadiusM: radius === undefined ? null : rounded(radius),
      pairs: order.map(index => {
        const timed = ranking.pairs.find(pair => pair.index === index);
        const ridden = atPace ? atPace.pairs.find(pair => pair.index === index) : timed;
        const failure = [...ranking.untimed, ...ranking.byRhythmAlone].find(
          each => each.index === index,
        )?.failure;
        return {
          name: skis[index].name,
          neededEdgeDeg: ridden ? rounded(ridden.neededEdge / DEGREE) : null,
          minHoldDeg: ridden ? rounded(ridden.leastGrip / DEGREE) : null,
          ...timesOf(timed),
          verdict: timed
            ? told(heldBackSentence(timed.run.run))
            : failure
              ? told(runFailureSentence(failure))
              : told({ key: 'line.behindInRhythm' }),
          turnRadius: known[index].source,
          rules: checks[index]?.verdict ?? null,
        };
      }),
      pick: ranking.pick === null ? null : skis[ranking.pick].name,
      because: toldAll(ranking.because),
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
    const gates = course.gates.length;
    const title =
      radius === undefined
        ? t('calc.set.titlePlain', { gates })
        : t('calc.set.title', { gates, kind: rhythm ? 'rhythm' : 'course', radius: radius.toFixed(2) });
    return {
      json,
      tables: [{ title, ...table }, ...worthTable(json.pairs[0])],
      csv: table,
      words: [
        toldAll(ranking.because),
        ...(atPace ? [toldAll(atPace.because)] : []),
        askedWords(course.asked, typeof options.profile === 'string' ? options.profile : null),
        ...remarks,
        ...known.map(({ words }) => words),
        t('calc.noAdvice'),
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

/** @throws InputFault naming the file and its row */
const readProfileFile = (file: string, text: string) =>
  asking(file, () => readProfile(expectKind(file, text, 'slope')));

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
  const title = t('calc.worth.titleOf', { name });
  return [{ title, ...tableOf(spokenWorth(worth, 'calc.worth.inAll')) }];
}

/** Tells every tenth of the way once. */
function tenths(progress: (text: string) => void): (share: number) => void {
  let last = 0;
  return share => {
    const tenth = Math.floor(10 * share);
    if (tenth > last) progress(t('calc.set.progress', { percent: 10 * tenth }));
    last = Math.max(last, tenth);
  };
}

function usualOf(discipline: 'SL' | 'GS'): Sentence {
  const { courseSlopeDeg: slope, courseSpeedKmh: speed } = USUAL_COURSE[discipline];
  return { key: 'calc.set.usual', values: { slope, speed } };
}

/** More pairs than this take long enough for a person to wonder. */
const TOLD_FROM = 4;

/** Every pair given is ranked; one of another discipline than the gates are set for is named. */
function disciplineRemarks(skis: readonly Ski[], set: SetQuestion): string[] {
  return skis.flatMap(({ name, discipline }) =>
    discipline === 'other' || discipline === set.discipline
      ? []
      : [
          t('calc.set.discipline', {
            name,
            stated: t(`discipline.${discipline}`),
            taken: t(`discipline.${set.discipline}`),
          }),
        ],
  );
}
