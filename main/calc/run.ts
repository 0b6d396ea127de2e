import { wallStrengthOf } from '../../core/carve/index.ts';
import { fieldsOf, inSi, siOf, USUAL } from '../../core/conditions/index.ts';
import {
  evenSlope,
  heldEdge,
  linkedTurns,
  runFailureSentence,
  SLIPPING_FROM,
  solveRun,
  type Track,
} from '../../core/run/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import { legSpanOf } from '../../core/skier/index.ts';
import { DEGREE, KMH } from '../../core/units/index.ts';
import { say } from '../host/index.ts';
import type { Command } from './command.ts';
import { rangeOf } from './condition-options.ts';
import { asking, InputFault } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { runWorkings } from './run-workings.ts';
import { readingTable, tableOf } from './table.ts';
import { turnOf } from './turn-of.ts';
import { t } from './words.ts';

/** Rows a sample: twenty samples a second draw a smooth track and keep the document small. */
const SAMPLE_EVERY = 5;

const ASKED = [
  'hardnessNPerMm3',
  ...fieldsOf('hill', 'start', 'turns', 'body', 'legSpan', 'glide', 'legs', 'model', 'wall'),
] as const;

export const run: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.run.summary',
  conditions: ASKED,
  // Its own because 0 is taken too.
  options: { edge: { type: 'string' } },
  notes: {
    key: 'calc.run.notes',
    values: { edge: USUAL.edgeDeg, wall: { key: 'calc.wallNote' }, slip: SLIPPING_FROM / DEGREE },
  },
  files: [1, 1],
  async run({ files: [file], options, said, read, note }) {
    const ski = await skiFrom(file, read, note);
    const edge = oneNumber(options, 'edge', { ...rangeOf('edgeDeg'), from: 0 }, USUAL.edgeDeg);
    const { slope, period, turns, hardness, ...asked } = inSi({ ...USUAL, ...said }, ASKED);
    const profile = asking(file, () => evenSlope(slope));
    const known = turnOf(file, ski, hardness);
    const found = asking(file, () =>
      solveRun({
        turn: known.turn,
        baseBevel: ski.baseBevel,
        contactLength: ski.contactLength,
        profile,
        programme: programme(siOf('edgeDeg', edge), period, turns),
        ...asked,
        ...legSpanOf(said),
        wallStrength: wallStrengthOf(said),
      }),
    );
    if (!found.ok) throw new InputFault(`${file}: run: ${say(runFailureSentence(found, 'edge'))}`);
    const { track } = found;
    const { summary } = track;
    const json = {
      name: ski.name,
      seconds: rounded(summary.seconds),
      distanceM: rounded(summary.distance),
      dropM: rounded(summary.drop),
      endSpeedKmh: rounded(summary.endSpeed / KMH),
      maxLoadBodyWeights: rounded(summary.maxLoadBodyWeights),
      minHoldDeg: rounded(summary.minHold / DEGREE),
      wallUsed: rounded(summary.maxWall),
      skidSeconds: rounded(summary.skidSeconds),
      maxLeanDeg: rounded(summary.maxLean / DEGREE),
      minLegM: rounded(summary.minLeg),
      airSeconds: rounded(summary.airSeconds),
      energyErrorRatio: rounded(summary.energyErrorRatio),
      end: summary.end,
      turnRadius: known.source,
      samples: samplesOf(track),
    };
    const samples = tableOf(json.samples);
    const every = Math.max(1, Math.round(samples.rows.length / 24));
    return {
      json,
      tables: [
        readingTable(t('calc.run.title', { name: ski.name, end: t(`calc.run.end.${summary.end}`) }), [
          [t('calc.run.time'), json.seconds, 's'],
          [t('calc.run.distance'), json.distanceM, 'm'],
          [t('calc.run.drop'), json.dropM, 'm'],
          [t('calc.run.endSpeed'), json.endSpeedKmh, 'km/h'],
          [t('calc.run.load'), json.maxLoadBodyWeights, t('calc.bodyWeights')],
          [t('calc.run.hold'), json.minHoldDeg, '°'],
          [t('calc.run.wall'), json.wallUsed && 100 * json.wallUsed, '%'],
          [t('calc.run.slipping', { angle: SLIPPING_FROM / DEGREE }), json.skidSeconds, 's'],
          [t('calc.run.lean'), json.maxLeanDeg, '°'],
          [t('calc.run.leg'), json.minLegM, 'm'],
        ]),
        {
          title: t('calc.run.track'),
          ...samples,
          rows: samples.rows.filter((_, index) => index % every === 0),
        },
      ],
      csv: samples,
      words: `${known.words} ${t('calc.noAdvice')}`,
      workings: [...shapeWorkings(ski), ...runWorkings(ski, track, { profile, mass: asked.mass })],
    };
  },
};

/** Turns of the edge angle given; straight on skis that lie flat. */
function programme(edge: number, period: number, turns: number) {
  return edge > 0 ? linkedTurns({ peakEdge: edge, period, turns }) : heldEdge(0, (turns * period) / 2);
}

function samplesOf(track: Track) {
  const last = track.t.length - 1;
  const rows = [...track.t.keys()].filter(i => i % SAMPLE_EVERY === 0 || i === last);
  return rows.map(i => ({
    t: rounded(track.t[i]),
    xM: rounded(track.x[i]),
    yM: rounded(track.y[i]),
    speedKmh: rounded(track.speed[i] / KMH),
    edgeDeg: rounded(track.edge[i] / DEGREE),
    leanDeg: rounded(track.lean[i] / DEGREE),
    loadN: rounded(track.load[i]),
    radiusM: rounded(track.radius[i]),
    holdDeg: rounded(track.hold[i] / DEGREE),
    massXM: rounded(track.massX[i]),
    massYM: rounded(track.massY[i]),
    legM: rounded(track.leg[i]),
    slipDeg: rounded(track.slip[i] / DEGREE),
  }));
}
