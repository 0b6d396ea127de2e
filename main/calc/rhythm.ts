import { wallStrengthOf } from '../../core/carve/index.ts';
import { fieldsOf, inSi, USUAL } from '../../core/conditions/index.ts';
import {
  type HeldBackBy,
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
import { say } from '../host/index.ts';
import type { Command } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { oneOf } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { readingTable, tableOf } from './table.ts';
import { surfaceOf } from './turn-surface.ts';
import { t } from './words.ts';
import { spokenWorth, worthRows } from './worth-rows.ts';

const ASKED = [
  'hardnessNPerMm3',
  ...fieldsOf('gates', 'pole', 'hill', 'body', 'legSpan', 'limits', 'glide', 'model', 'wall'),
] as const;

export const rhythm: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.rhythm.summary',
  conditions: ASKED,
  options: { turn: { type: 'string' } },
  notes: { key: 'calc.rhythm.notes', values: { wall: { key: 'calc.wallNote' } } },
  files: [1, 1],
  async run({ files: [file], options, said, read, note, progress }) {
    const ski = await skiFrom(file, read, note);
    const { hardness, slope, spacing, offset, ...asked } = inSi({ ...USUAL, ...said }, ASKED);
    const gates = { spacing, offset };
    const turn = oneOf(options, 'turn', ['groove', 'cosine'] as const) ?? 'groove';
    progress(t('calc.bending', { name: ski.name }));
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
        readingTable(t('calc.rhythm.title', { name: ski.name, ...gates }), [
          [t('calc.rhythm.gateTime'), found.secondsPerGate.toFixed(3), 's'],
          [t('calc.rhythm.meanSpeed'), json.meanSpeedKmh, 'km/h'],
          [t('calc.rhythm.peakEdge'), json.peakEdgeDeg, '°'],
          [t('calc.rhythm.peakLean'), json.peakLeanDeg, '°'],
          [t('calc.rhythm.peakLoad'), json.peakLoadBodyWeights, t('calc.bodyWeights')],
          [t('calc.rhythm.leastRadius'), json.leastRadiusM, 'm'],
          [t('calc.rhythm.wall'), percent(json.wallUsed), '%'],
          [t('calc.rhythm.skisAcross'), json.skisAcrossM, 'm'],
          [t('calc.rhythm.massAcross'), json.massAcrossM, 'm'],
          [t('calc.rhythm.air'), percent(shares.drag), '%'],
          [t('calc.rhythm.friction'), percent(shares.friction), '%'],
          [t('calc.rhythm.scrape'), percent(shares.scrape), '%'],
        ]),
        { title: t('calc.worth.title'), ...tableOf(spokenWorth(rows, 'calc.worth.perGate')) },
        { title: t('calc.rhythm.track'), ...samples, rows: samples.rows.filter((_, i) => i % 4 === 0) },
      ],
      csv: samples,
      words: `${heldBackWords(json.heldBackBy)} ${known.words} ${t('calc.noAdvice')}`,
      workings: [...shapeWorkings(ski), ...rhythmWorkings(found)],
    };
  },
};

/** What holds the turn back, the dearest first. */
function heldBackWords(by: readonly HeldBackBy[]): string {
  const names = by.map(each => t(`calc.heldBackBy.${each}`));
  const first = names.reduceRight((next, one) => t('calc.rhythm.then', { one, next }));
  return t('calc.rhythm.heldBack', { first });
}

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
