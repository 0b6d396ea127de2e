import { airDensity, DRAG_AREA, evenSlope, linkedTurns, solveRun, type Track } from '../../core/run/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import type { Command, CommandInput } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { DEGREE, KMH, rounded } from './quantity.ts';
import { EDGE, SLOPE } from './ranges.ts';
import { runWorkings } from './run-workings.ts';
import { hardnessFrom, SNOW_NOTE } from './snow.ts';
import { readingTable, tableOf } from './table.ts';
import { NO_ADVICE, turnOf } from './turn-of.ts';

/** Seconds between samples: twenty a second draw a smooth track and keep the document small. */
const SAMPLE_STEP = 0.05;

export const run: Command = {
  usage: 'PAIR',
  summary: 'What happens over linked turns down an even slope',
  options: {
    slope: { type: 'string' },
    snow: { type: 'string' },
    edge: { type: 'string' },
    period: { type: 'string' },
    turns: { type: 'string' },
    'start-speed': { type: 'string' },
    mass: { type: 'string' },
    friction: { type: 'string' },
    'drag-area': { type: 'string' },
    'air-density': { type: 'string' },
  },
  notes:
    '--slope DEG (15), --edge DEG at the height of a turn (40), --period S of two turns (3), --turns N (8),\n' +
    '--start-speed KMH (25), --mass KG of skier and equipment (75), --friction MU (0.03),\n' +
    `--drag-area M2 (${DRAG_AREA['race stance']}), --air-density RHO in kg/m³ (${airDensity(1500).toFixed(3)}, at 1500 m).\n` +
    SNOW_NOTE,
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const { slope, ...asked } = conditions(options);
    const profile = evenSlope(slope);
    const known = turnOf(file, ski, hardnessFrom(options.snow));
    const found = asking(file, () =>
      solveRun(
        {
          turn: known.turn,
          baseBevel: ski.baseBevel,
          contactLength: ski.contactLength,
          profile,
          ...asked,
        },
        { outputStep: SAMPLE_STEP },
      ),
    );
    if (!found.ok) throw new InputFault(`${file}: run: ${found.message}`);
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
      skidSeconds: rounded(summary.skidSeconds),
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
        readingTable(`${ski.name}, ended: ${summary.end}`, [
          ['time', json.seconds, 's'],
          ['distance', json.distanceM, 'm'],
          ['drop', json.dropM, 'm'],
          ['end speed', json.endSpeedKmh, 'km/h'],
          ['greatest load', json.maxLoadBodyWeights, 'body weights'],
          ['least hold', json.minHoldDeg, '°'],
          ['skidding', json.skidSeconds, 's'],
        ]),
        { title: 'Track', ...samples, rows: samples.rows.filter((_, index) => index % every === 0) },
      ],
      csv: samples,
      words: `${known.words} ${NO_ADVICE}`,
      workings: [...shapeWorkings(ski), ...runWorkings(ski, track, { profile, mass: asked.mass })],
    };
  },
};

function conditions(options: CommandInput['options']) {
  const number = (name: string, unit: string, from: number, to: number, fallback: number) =>
    oneNumber(options, name, { unit, from, to }, fallback);
  return {
    slope: oneNumber(options, 'slope', SLOPE, 15) * DEGREE,
    programme: linkedTurns({
      peakEdge: oneNumber(options, 'edge', EDGE, 40) * DEGREE,
      period: number('period', 's', 0.5, 20, 3),
      turns: oneNumber(options, 'turns', { unit: 'turns', from: 1, to: 200, whole: true }, 8),
    }),
    startSpeed: number('start-speed', 'km/h', 1.8, 200, 25) * KMH,
    mass: number('mass', 'kg', 20, 250, 75),
    friction: number('friction', '(ratio)', 0, 0.5, 0.03),
    dragArea: number('drag-area', 'm²', 0, 3, DRAG_AREA['race stance']),
    airDensity: number('air-density', 'kg/m³', 0, 2, airDensity(1500)),
  };
}

function samplesOf(track: Track) {
  return Array.from(track.t, (t, i) => ({
    t: rounded(t),
    xM: rounded(track.x[i]),
    yM: rounded(track.y[i]),
    speedKmh: rounded(track.speed[i] / KMH),
    edgeDeg: rounded(track.edge[i] / DEGREE),
    leanDeg: rounded(track.lean[i] / DEGREE),
    loadN: rounded(track.load[i]),
    radiusM: rounded(track.radius[i]),
    holdDeg: rounded(track.hold[i] / DEGREE),
  }));
}
