import type { Command, CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { oneNumber, oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { PER_MM3 } from './quantity.ts';
import { hardnessFrom } from './snow.ts';
import { sweepOnAllCores } from './sweep-cores.ts';
import { type Question, questions } from './sweep-row.ts';
import { csvLine } from './table.ts';
import { numberFields, readAxis, rowCount } from './vary.ts';

export const sweep: Command = {
  usage: 'PAIR',
  summary: 'One question over a grid of values, streamed as CSV or (--json) JSON lines',
  options: {
    vary: { type: 'string', multiple: true },
    ask: { type: 'string' },
    edge: { type: 'string' },
    load: { type: 'string' },
    snow: { type: 'string' },
    fore: { type: 'string' },
  },
  files: [1, 1],
  async run({ files: [file], options, read, write }) {
    const pair = await pairFrom(file, read);
    const ask = oneOf(options, 'ask', Object.keys(questions) as Question[]) ?? 'shape';
    const own = Object.keys(questions[ask].options);
    const given = Array.isArray(options.vary) ? options.vary.map(String) : [];
    if (given.length === 0) throw new InputFault('--vary: is missing; give FIELD=FROM:TO:STEP');
    const axes = given.map(readAxis);
    const accepted = [...own, ...numberFields(pair)];
    for (const { field } of axes) {
      if (!accepted.includes(field)) {
        throw new InputFault(
          `--vary: ${field} is no number of ${file} or --ask ${ask}; give ${accepted.join(', ')}`,
        );
      }
    }
    const fixed = fixedOptions(options, own);
    const names = [...axes.map(({ field }) => field), ...questions[ask].columns, 'problem'];
    if (!options.json) write(`${csvLine(names)}\n`);
    await sweepOnAllCores({ pair, axes, ask, fixed }, rowCount(axes), row =>
      write(
        options.json
          ? `${JSON.stringify(Object.fromEntries(names.map((name, i) => [name, row[i]])))}\n`
          : `${csvLine(row)}\n`,
      ),
    );
    return null;
  },
};

function fixedOptions(options: CommandInput['options'], own: readonly string[]): Record<string, number> {
  const fixed: Record<string, number> = {};
  for (const [name, range] of Object.entries(ranges)) {
    if (options[name] === undefined) continue;
    if (!own.includes(name)) {
      throw new InputFault(
        `--${name}: this question does not ask for it; it takes ${own.join(', ') || 'none'}`,
      );
    }
    fixed[name] = range ? oneNumber(options, name, range, 0) : hardnessFrom(options.snow) / PER_MM3;
  }
  return fixed;
}

const ranges = {
  edge: { unit: 'degrees', from: 0.5, to: 85 },
  load: { unit: 'N', from: 1, to: 20_000 },
  snow: null,
  fore: { unit: 'mm', from: -600, to: 600 },
};
