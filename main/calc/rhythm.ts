import { type Rhythm, rhythmWorkings, rhythm as solveRhythm, worthOf } from '../../core/line/index.ts';
import { airDensity, evenSlope } from '../../core/run/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import { GRAVITY, USUAL_SKIER } from '../../core/skier/index.ts';
import type { Command, CommandInput } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { oneNumber, oneOf } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { DEGREE, KMH, rounded } from './quantity.ts';
import { SLOPE } from './ranges.ts';
import { rhythmWorth, spokenWorth } from './rhythm-worth.ts';
import { hardnessFrom, SNOW_NOTE, WALL_NOTE, wallStrengthFrom } from './snow.ts';
import { readingTable, tableOf } from './table.ts';
import { NO_ADVICE } from './turn-of.ts';
import { surfaceOf } from './turn-surface.ts';

const USUAL_AIR = 1500;
const USUAL = { friction: 0.05, clearance: 0.3, scrape: 1 };

export const rhythm: Command = {
  usage: 'PAIR',
  summary: 'The quickest turn through evenly set gates, what holds it back, and what a change is worth',
  options: {
    spacing: { type: 'string' },
    offset: { type: 'string' },
    slope: { type: 'string' },
    snow: { type: 'string' },
    wall: { type: 'string' },
    turn: { type: 'string' },
    mass: { type: 'string' },
    'leg-min': { type: 'string' },
    'leg-max': { type: 'string' },
    'leg-speed': { type: 'string' },
    'push-max': { type: 'string' },
    'push-rate': { type: 'string' },
    'edge-max': { type: 'string' },
    friction: { type: 'string' },
    'drag-area': { type: 'string' },
    'air-density': { type: 'string' },
    clearance: { type: 'string' },
    scrape: { type: 'string' },
  },
  notes:
    '--spacing M of the gates down the hill, --offset M from side to side, --slope DEG (15); --clearance M from pole to\n' +
    `skis (${USUAL.clearance}). The skier: --mass KG (${USUAL_SKIER.mass}), --leg-min M (${USUAL_SKIER.legShortest}), --leg-max M (${USUAL_SKIER.legLongest}), --leg-speed M/S (${USUAL_SKIER.legSpeed}),\n` +
    `--push-max in body weights (${USUAL_SKIER.pushMost}), --push-rate in body weights a second (${USUAL_SKIER.pushRate}), --edge-max DEG (70),\n` +
    `--drag-area M2 (${USUAL_SKIER.dragArea}). --friction MU (${USUAL.friction}), --air-density RHO in kg/m³ (${airDensity(USUAL_AIR).toFixed(3)}, at ${USUAL_AIR} m),\n` +
    '--scrape SIGMA of an edge that slips (1). --turn groove, or cosine for the cosine rule.\n' +
    `${SNOW_NOTE}\n${WALL_NOTE}`,
  files: [1, 1],
  async run({ files: [file], options, read, note, progress }) {
    const ski = await skiFrom(file, read, note);
    const hardness = hardnessFrom(options.snow);
    const gates = gatesOf(options);
    const turn = oneOf(options, 'turn', ['groove', 'cosine'] as const) ?? 'groove';
    progress(`bending ${ski.name} into the snow`);
    const known = surfaceOf(file, ski, hardness, turn);
    const conditions = {
      ski: known.surface,
      contactLength: ski.contactLength,
      baseBevel: ski.baseBevel,
      outerShare: 0.7,
      wallStrength: wallStrengthFrom(options, hardness),
      ...skierOf(options),
    };
    const found = asking(file, () => solveRhythm({ conditions, ...gates }, { beginnings: 3 }));
    if (!found.ok) {
      const kept = found.limit.startsWith('end condition')
        ? 'no pace can be kept for ever: the turn does not end as it began'
        : `"${found.limit}" could not be kept ${Math.round(100 * found.at)} % of the way between two gates`;
      throw new InputFault(`${file}: rhythm: no turn found that keeps every limit; ${kept}`);
    }
    const worth = worthOf(found.chain, found.answer, conditions, [0]);
    const rows = rhythmWorth(ski, conditions, worth, known.groove);
    const json = {
      ...readingsOf(ski.name, found),
      turnRadius: known.source,
      worth: rows,
      samples: samplesOf(found),
    };
    const samples = tableOf(json.samples);
    const { shares } = json;
    return {
      json,
      tables: [
        readingTable(`${ski.name}, gates ${gates.spacing} m apart and ${gates.offset} m across`, [
          ['time a gate', found.secondsPerGate.toFixed(3), 's'],
          ['mean speed', json.meanSpeedKmh, 'km/h'],
          ['greatest edge angle', json.peakEdgeDeg, '°'],
          ['greatest lean', json.peakLeanDeg, '°'],
          ['greatest load', json.peakLoadBodyWeights, 'body weights'],
          ['least radius', json.leastRadiusM, 'm'],
          ['used of the wall of snow', percent(json.wallUsed), '%'],
          ['skis across', json.skisAcrossM, 'm'],
          ['mass across', json.massAcrossM, 'm'],
          ['lost to air', percent(shares.drag), '%'],
          ['lost to friction', percent(shares.friction), '%'],
          ['lost to scraping', percent(shares.scrape), '%'],
        ]),
        { title: 'What a change is worth (negative is quicker)', ...tableOf(spokenWorth(rows)) },
        { title: 'From gate to gate', ...samples, rows: samples.rows.filter((_, i) => i % 4 === 0) },
      ],
      csv: samples,
      words: `Held back most by ${json.heldBackBy.join(', then ')}. ${known.words} ${NO_ADVICE}`,
      workings: [...shapeWorkings(ski), ...rhythmWorkings(found)],
    };
  },
};

const percent = (share: number | null) => share && 100 * share;

function gatesOf(options: CommandInput['options']) {
  const spacing = oneNumber(options, 'spacing', { unit: 'm', from: 3, to: 100 });
  const offset = oneNumber(options, 'offset', { unit: 'm', from: 0, to: 30 });
  if (spacing === null || offset === null) {
    throw new InputFault(
      `--${spacing === null ? 'spacing' : 'offset'}: is missing; give --spacing and --offset of the gates in m`,
    );
  }
  return { spacing, offset };
}

function skierOf(options: CommandInput['options']) {
  const number = (name: string, unit: string, from: number, to: number, fallback: number) =>
    oneNumber(options, name, { unit, from, to }, fallback);
  return {
    skier: {
      ...USUAL_SKIER,
      mass: number('mass', 'kg', 20, 250, USUAL_SKIER.mass),
      legShortest: number('leg-min', 'm', 0.3, 1.2, USUAL_SKIER.legShortest),
      legLongest: number('leg-max', 'm', 0.4, 1.4, USUAL_SKIER.legLongest),
      legSpeed: number('leg-speed', 'm/s', 0.1, 5, USUAL_SKIER.legSpeed),
      pushMost: number('push-max', 'body weights', 1.1, 8, USUAL_SKIER.pushMost),
      pushRate: number('push-rate', 'body weights/s', 1, 100, USUAL_SKIER.pushRate),
      edgeMost: number('edge-max', 'degrees', 10, 85, 70) * DEGREE,
      dragArea: number('drag-area', 'm²', 0, 3, USUAL_SKIER.dragArea),
    },
    slope: evenSlope(oneNumber(options, 'slope', SLOPE, 15) * DEGREE),
    friction: number('friction', '(ratio)', 0, 0.5, USUAL.friction),
    airDensity: number('air-density', 'kg/m³', 0, 2, airDensity(USUAL_AIR)),
    clearance: number('clearance', 'm', 0, 5, USUAL.clearance),
    scrape: number('scrape', '(ratio)', 0, 10, USUAL.scrape),
  };
}

function readingsOf(name: string, { run, secondsPerGate, meanSpeed }: Rhythm) {
  const most = (of: Float64Array) => of.reduce((greatest, v) => Math.max(greatest, Math.abs(v)), 0);
  const { friction, scrape, drag } = run.energy;
  const lost = friction + scrape + drag;
  return {
    name,
    secondsPerGate: rounded(secondsPerGate),
    meanSpeedKmh: rounded(meanSpeed / KMH),
    peakEdgeDeg: rounded(most(run.edge) / DEGREE),
    peakLeanDeg: rounded(most(run.lean) / DEGREE),
    peakLoadBodyWeights: rounded(most(run.push)),
    leastRadiusM: rounded(1 / most(run.curvature)),
    wallUsed: rounded(most(run.wall)),
    skisAcrossM: rounded(most(run.x)),
    massAcrossM: rounded(most(run.massX)),
    shares: {
      scrape: rounded(scrape / lost),
      friction: rounded(friction / lost),
      drag: rounded(drag / lost),
    },
    heldBackBy: run.limits.slice(0, 3).map(({ by }) => by),
  };
}

function samplesOf({ run, question: { conditions } }: Rhythm) {
  const weight = conditions.skier.mass * GRAVITY;
  return Array.from(run.t, (t, i) => ({
    t: rounded(t),
    xM: rounded(run.x[i]),
    yM: rounded(run.y[i]),
    massXM: rounded(run.massX[i]),
    massYM: rounded(run.massY[i]),
    speedKmh: rounded(run.speed[i] / KMH),
    edgeDeg: rounded(run.edge[i] / DEGREE),
    leanDeg: rounded(run.lean[i] / DEGREE),
    legM: rounded(run.leg[i]),
    loadN: rounded(run.push[i] * weight),
    radiusM: rounded(1 / Math.abs(run.curvature[i])),
    driftDeg: rounded(run.drift[i] / DEGREE),
  }));
}
