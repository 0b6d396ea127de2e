import {
  cosineRadiusWorking,
  grooveSolver,
  partRadiusWorking,
  penetrationWorking,
  REBOUND,
  turnRadiusWorking,
  twistWorking,
} from '../../core/carve/index.ts';
import { say } from '../../core/language/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { bootPoint, bootWorkings } from './boot-point.ts';
import type { Command } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { carvingSkiOf, groovePoint, grooveProfile } from './groove-point.ts';
import { numberList, oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { DEGREE, MM } from './quantity.ts';
import { EDGE, foreRange, LOAD, REBOUND_RANGE } from './ranges.ts';
import { hardnessFrom, SNOW_NOTE } from './snow.ts';
import { type Table, tableOf } from './table.ts';

export const carve: Command = {
  usage: 'PAIR',
  summary: 'What turn the ski carves in its own groove',
  options: {
    edge: { type: 'string' },
    load: { type: 'string' },
    snow: { type: 'string' },
    fore: { type: 'string' },
    rebound: { type: 'string' },
  },
  notes:
    '--edge DEG,… and --load N,… several comma-separated (20 to 60 by tens; 1200 unless given); every pairing\n' +
    `is solved.\n${SNOW_NOTE}\n` +
    '--fore MM load ahead of the boot centre, behind it when negative (0 unless given).\n' +
    `--rebound MM how far packed snow springs back (${REBOUND / MM} unless given).\n` +
    'turnRadiusM is that of the track on which the loaded edge scrapes least; rearRadiusM and frontRadiusM are of the\n' +
    'parts behind and ahead of the boot centre, with a word where their load sits on too short a stretch to tell.',
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const cut = sidecut(ski);
    const edges = numberList(options, 'edge', EDGE, [20, 30, 40, 50, 60]);
    const loads = numberList(options, 'load', LOAD, [1200]);
    const hardness = hardnessFrom(options.snow);
    const fore = oneNumber(options, 'fore', foreRange(ski.contactLength / MM), 0) * MM;
    const rebound = oneNumber(options, 'rebound', REBOUND_RANGE, REBOUND / MM) * MM;
    const carving = asking(file, () => carvingSkiOf(file, ski));
    const solver = asking(file, () => grooveSolver(carving));
    const solved = loads.flatMap(load =>
      edges.map(edge => {
        const answer = solver.solve({ edgeAngle: edge * DEGREE, load, hardness, fore, rebound });
        if (answer.ok) return answer;
        throw new InputFault(`${file}: ${say(answer.reason)}`);
      }),
    );
    const readings = solved.map(equilibrium => groovePoint(cut.radius, equilibrium));
    const all = withDecimals(tableOf(readings));
    const shown = withDecimals(tableOf(readings.map(legible)));
    const rigid = { ...ski, sidecutRadius: cut.radius, sidecutDepth: cut.depth };
    return {
      json: {
        name: ski.name,
        points: solved.map((equilibrium, i) => ({
          ...readings[i],
          ...bootPoint(ski, carving, equilibrium),
          profile: grooveProfile(equilibrium),
        })),
      },
      tables: [{ title: ski.name, ...shown }],
      csv: all,
      workings: solved.flatMap(equilibrium => [
        cosineRadiusWorking(rigid, equilibrium.conditions.edgeAngle),
        turnRadiusWorking(equilibrium),
        partRadiusWorking(equilibrium, 'rear'),
        partRadiusWorking(equilibrium, 'front'),
        penetrationWorking(carving, equilibrium),
        ...(['tip', 'tail'] as const).flatMap(end => twistWorking(carving, equilibrium, end) ?? []),
        ...bootWorkings(ski, carving, equilibrium),
      ]),
    };
  },
};

/**
 * What is read in a table: without what is said twice or given by the asker, and a part's radius with "short" after it
 * where its load sits on too short a stretch to tell.
 */
function legible({
  reboundMm: _given,
  wholeRadiusM: _again,
  rearTooShort,
  frontTooShort,
  ...point
}: ReturnType<typeof groovePoint>) {
  const part = (radius: number | null, tooShort: boolean) =>
    radius === null ? null : `${radius.toFixed(2)}${tooShort ? ' short' : ''}`;
  return {
    ...point,
    rearRadiusM: part(point.rearRadiusM, rearTooShort),
    frontRadiusM: part(point.frontRadiusM, frontTooShort),
  };
}

const withDecimals = ({ columns, rows }: Table): Table => ({
  columns: columns.map(({ name }) => ({ name, ...decimalsOf(name) })),
  rows,
});

function decimalsOf(name: string) {
  if (name === 'iterations' || name === 'loadN') return { decimals: 0 };
  return name === 'residual' ? { decimals: 12 } : {};
}
