import {
  airDensity,
  DRAG_AREA,
  evenSlope,
  heldEdge,
  linkedTurns,
  SLIPPING_FROM,
  solveRun,
  type Track,
  USUAL_LEG,
} from '../../core/run/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import type { Command, CommandInput } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { DEGREE, KMH, rounded } from './quantity.ts';
import { EDGE, SLOPE } from './ranges.ts';
import { runWorkings } from './run-workings.ts';
import { hardnessFrom, SNOW_NOTE, WALL_NOTE, wallStrengthFrom } from './snow.ts';
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
    wall: { type: 'string' },
    edge: { type: 'string' },
    period: { type: 'string' },
    turns: { type: 'string' },
    'start-speed': { type: 'string' },
    mass: { type: 'string' },
    friction: { type: 'string' },
    'drag-area': { type: 'string' },
    'air-density': { type: 'string' },
    'leg-min': { type: 'string' },
    'leg-max': { type: 'string' },
    'leg-speed': { type: 'string' },
    'push-max': { type: 'string' },
    'push-rate': { type: 'string' },
  },
  notes:
    '--slope DEG (15), --edge DEG at the height of a turn (40; 0 runs straight), --period S of two turns (3), --turns N (8),\n' +
    '--start-speed KMH (25), --mass KG of skier and equipment (75), --friction MU (0.03),\n' +
    `--drag-area M2 (${DRAG_AREA['race stance']}), --air-density RHO in kg/m³ (${airDensity(1500).toFixed(3)}, at 1500 m).\n` +
    `--leg-min M (${USUAL_LEG.legMin}) and --leg-max M (${USUAL_LEG.legMax}), skis to the mass, --leg-speed M/S (${USUAL_LEG.legSpeed}),\n` +
    `--push-max BW (${USUAL_LEG.pushMax}) of the leg in body weights, --push-rate BW/S (${USUAL_LEG.pushRate}).\n` +
    `skidSeconds is the time in which the edge slips more than ${SLIPPING_FROM / DEGREE}° on average.\n` +
    `${SNOW_NOTE}\n${WALL_NOTE}`,
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const { slope, ...asked } = conditions(options);
    const profile = evenSlope(slope);
    const hardness = hardnessFrom(options.snow);
    const known = turnOf(file, ski, hardness);
    const found = asking(file, () =>
      solveRun(
        {
          turn: known.turn,
          baseBevel: ski.baseBevel,
          contactLength: ski.contactLength,
          wallStrength: wallStrengthFrom(options, hardness),
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
        readingTable(`${ski.name}, ended: ${summary.end}`, [
          ['time', json.seconds, 's'],
          ['distance', json.distanceM, 'm'],
          ['drop', json.dropM, 'm'],
          ['end speed', json.endSpeedKmh, 'km/h'],
          ['greatest load', json.maxLoadBodyWeights, 'body weights'],
          ['least hold', json.minHoldDeg, '°'],
          ['used of the wall of snow', json.wallUsed && 100 * json.wallUsed, '%'],
          [`slipping over ${SLIPPING_FROM / DEGREE}°`, json.skidSeconds, 's'],
          ['greatest lean', json.maxLeanDeg, '°'],
          ['shortest leg', json.minLegM, 'm'],
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
  const edge = oneNumber(options, 'edge', { ...EDGE, from: 0 }, 40) * DEGREE;
  const period = number('period', 's', 0.5, 20, 3);
  const turns = oneNumber(options, 'turns', { unit: 'turns', from: 1, to: 200, whole: true }, 8);
  const legMin = number('leg-min', 'm', 0.2, 1.4, USUAL_LEG.legMin);
  return {
    slope: oneNumber(options, 'slope', SLOPE, 15) * DEGREE,
    programme: programme(edge, period, turns),
    startSpeed: number('start-speed', 'km/h', 1.8, 200, 25) * KMH,
    mass: number('mass', 'kg', 20, 250, 75),
    friction: number('friction', '(ratio)', 0, 0.5, 0.03),
    dragArea: number('drag-area', 'm²', 0, 3, DRAG_AREA['race stance']),
    airDensity: number('air-density', 'kg/m³', 0, 2, airDensity(1500)),
    legMin,
    // A leg that cannot change its length at all has no room for balance.
    legMax: number('leg-max', 'm', legMin + 0.01, 1.5, Math.max(USUAL_LEG.legMax, legMin + 0.01)),
    legSpeed: number('leg-speed', 'm/s', 0.05, 10, USUAL_LEG.legSpeed),
    pushMax: number('push-max', 'body weights', 1.2, 20, USUAL_LEG.pushMax),
    pushRate: number('push-rate', 'body weights/s', 0.5, 200, USUAL_LEG.pushRate),
  };
}

/** Turns of the edge angle given; straight on skis that lie flat. */
function programme(edge: number, period: number, turns: number) {
  return edge > 0 ? linkedTurns({ peakEdge: edge, period, turns }) : heldEdge(0, (turns * period) / 2);
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
    massXM: rounded(track.massX[i]),
    massYM: rounded(track.massY[i]),
    legM: rounded(track.leg[i]),
    slipDeg: rounded(track.slip[i] / DEGREE),
  }));
}
