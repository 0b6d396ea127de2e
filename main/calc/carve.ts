import {
  cosineRadiusWorking,
  grooveSolver,
  partRadiusWorking,
  penetrationWorking,
  turnRadiusWorking,
  twistWorking,
} from '../../core/carve/index.ts';
import { fieldsOf, inSi, USUAL } from '../../core/conditions/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { MM } from '../../core/units/index.ts';
import { say } from '../host/index.ts';
import { bootPoint, bootWorkings } from './boot-point.ts';
import type { Command } from './command.ts';
import { rangeOf } from './condition-options.ts';
import { asking, InputFault } from './fault.ts';
import { carvingSkiOf, groovePoint, grooveProfile } from './groove-point.ts';
import { numberList, oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { foreRange } from './ranges.ts';
import { type Table, tableOf } from './table.ts';
import { t } from './words.ts';

export const carve: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.carve.summary',
  conditions: fieldsOf('snow'),
  options: { edge: { type: 'string' }, load: { type: 'string' }, fore: { type: 'string' } },
  notes: { key: 'calc.carve.notes', values: { load: USUAL.loadN } },
  files: [1, 1],
  async run({ files: [file], options, said, read, note }) {
    const ski = await skiFrom(file, read, note);
    const cut = sidecut(ski);
    const edges = numberList(options, 'edge', rangeOf('edgeDeg'), [20, 30, 40, 50, 60]);
    const loads = numberList(options, 'load', rangeOf('loadN'), [USUAL.loadN]);
    const foreMm = oneNumber(options, 'fore', foreRange(ski.contactLength / MM), USUAL.foreMm);
    const carving = asking(file, () => carvingSkiOf(file, ski));
    const solver = asking(file, () => grooveSolver(carving));
    const solved = loads.flatMap(load =>
      edges.map(edge => {
        const asked = { ...USUAL, ...said, edgeDeg: edge, loadN: load, foreMm };
        const answer = solver.solve(inSi(asked, fieldsOf('edge', 'snow')));
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
    radius && (tooShort ? t('calc.carve.short', { radius: radius.toFixed(2) }) : radius.toFixed(2));
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
