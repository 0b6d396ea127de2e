import {
  cosineRadiusWorking,
  grooveSolver,
  penetrationWorking,
  turnRadiusWorking,
  twistWorking,
  wholeRadiusWorking,
} from '../../core/carve/index.ts';
import { sidecut } from '../../core/shape/index.ts';
import { bootPoint, bootWorkings } from './boot-point.ts';
import type { Command } from './command.ts';
import { asking, InputFault } from './fault.ts';
import { carvingSkiOf, groovePoint, grooveProfile } from './groove-point.ts';
import { numberList, oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { DEGREE, MM } from './quantity.ts';
import { EDGE, foreRange, LOAD } from './ranges.ts';
import { hardnessFrom, SNOW_NOTE } from './snow.ts';
import { tableOf } from './table.ts';

export const carve: Command = {
  usage: 'PAIR',
  summary: 'What turn the ski carves in its own groove',
  options: {
    edge: { type: 'string' },
    load: { type: 'string' },
    snow: { type: 'string' },
    fore: { type: 'string' },
  },
  notes:
    '--edge DEG,… and --load N,… several comma-separated (20 to 60 by tens; 1200 unless given); every pairing\n' +
    `is solved.\n${SNOW_NOTE}\n` +
    '--fore MM load ahead of the boot centre, behind it when negative (0 unless given).',
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const cut = sidecut(ski);
    const edges = numberList(options, 'edge', EDGE, [20, 30, 40, 50, 60]);
    const loads = numberList(options, 'load', LOAD, [1200]);
    const hardness = hardnessFrom(options.snow);
    const fore = oneNumber(options, 'fore', foreRange(ski.contactLength / MM), 0) * MM;
    const carving = asking(file, () => carvingSkiOf(file, ski));
    const solver = asking(file, () => grooveSolver(carving));
    const solved = loads.flatMap(load =>
      edges.map(edge => {
        const answer = solver.solve({ edgeAngle: edge * DEGREE, load, hardness, fore });
        if (answer.ok) return answer;
        throw new InputFault(`${file}: ${answer.reason}`);
      }),
    );
    const readings = solved.map(equilibrium => groovePoint(cut.radius, equilibrium));
    const { columns, rows } = tableOf(readings);
    const table = { columns: columns.map(({ name }) => ({ name, ...decimalsOf(name) })), rows };
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
      tables: [{ title: ski.name, ...table }],
      csv: table,
      workings: solved.flatMap(equilibrium => [
        cosineRadiusWorking(rigid, equilibrium.conditions.edgeAngle),
        turnRadiusWorking(equilibrium),
        wholeRadiusWorking(equilibrium),
        penetrationWorking(carving, equilibrium),
        ...(['tip', 'tail'] as const).flatMap(end => twistWorking(carving, equilibrium, end) ?? []),
        ...bootWorkings(ski, carving, equilibrium),
      ]),
    };
  },
};

function decimalsOf(name: string) {
  if (name === 'iterations' || name === 'loadN') return { decimals: 0 };
  return name === 'residual' ? { decimals: 12 } : {};
}
