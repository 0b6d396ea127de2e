import { wallStrengthOf } from '../../core/carve/index.ts';
import { fieldsOf, inSi, USUAL } from '../../core/conditions/index.ts';
import { say } from '../../core/language/index.ts';
import {
  type Rhythm,
  rhythmFailureSentence,
  rhythmWorkings,
  skiWorths,
  rhythm as solveRhythm,
  worthOf,
} from '../../core/line/index.ts';
import { evenSlope } from '../../core/run/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import { GRAVITY, skierOf } from '../../core/skier/index.ts';
import { DEGREE, KMH } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { oneOf } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { readingTable, tableOf } from './table.ts';
import { NO_ADVICE, WALL_NOTE } from './turn-of.ts';
import { surfaceOf } from './turn-surface.ts';
import { spokenWorth, worthRows } from './worth-rows.ts';

const ASKED = [
  'hardnessNPerMm3',
  ...fieldsOf('gates', 'pole', 'hill', 'body', 'legSpan', 'limits', 'glide', 'model', 'wall'),
] as const;

export const rhythm: Command = {
  usage: 'PAIR',
  summary: 'The quickest turn through evenly set gates, what holds it back, and what a change is worth',
  conditions: ASKED,
  options: { turn: { type: 'string' } },
  notes:
    'Legs are as long as the height says unless --leg-min and --leg-max do. --turn groove, or cosine for the cosine rule.\n' +
    WALL_NOTE,
  files: [1, 1],
  async run({ files: [file], options, said, read, note, progress }) {
    const ski = await skiFrom(file, read, note);
    const { hardness, slope, spacing, offset, ...asked } = inSi({ ...USUAL, ...said }, ASKED);
    const gates = { spacing, offset };
    const turn = oneOf(options, 'turn', ['groove', 'cosine'] as const) ?? 'groove';
    progress(`bending ${ski.name} into the snow`);
    const known = surfaceOf(file, ski, hardness, turn);
    const conditions = {
      ski: known.surface,
      contactLength: ski.contactLength,
      baseBevel: ski.baseBevel,
      skier: skierOf(said),
      ...asked,
      wallStrength: wallStrengthOf(said),
      slope: asking(file, () => evenSlope(slope)),
    };
    const found = asking(file, () => solveRhythm({ conditions, ...gates }));
    if (!found.ok) throw new InputFault(`${file}: rhythm: ${say(rhythmFailureSentence(found))}`);
    const worth = worthOf(found.chain, found.answer, conditions, [0]);
    const ofSki = known.groove ? skiWorths(ski, known.surface, known.groove, worth.groove) : [];
    const rows = worthRows(worth.inputs, ofSki);
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
