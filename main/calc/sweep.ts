import { fieldsOf, rowOf } from '../../core/conditions/index.ts';
import { bendingOf } from '../../core/flex/index.ts';
import { type Pair, skiOf } from '../../core/pair/index.ts';
import { asCsvFile } from '../../core/table/index.ts';
import type { Command, CommandInput } from './command.ts';
import { conditionOptions, saidBy } from './condition-options.ts';
import { asking, InputFault, lacking } from './fault.ts';
import { acceptedIn, oneNumber, oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { sweepOnAllCores } from './sweep-cores.ts';
import { optionsOf, type Question, questions } from './sweep-row.ts';
import { csvLine } from './table.ts';
import { type Axis, numberFields, readAxis, rowCount } from './vary.ts';
import { t } from './words.ts';

const CARVE = fieldsOf('edge', 'snow');

export const sweep: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.sweep.summary',
  options: {
    vary: { type: 'string', multiple: true },
    ask: { type: 'string' },
    ...conditionOptions(CARVE),
  },
  notes: { key: 'calc.sweep.notes' },
  files: [1, 1],
  async run({ files: [file], options, read, write, note }) {
    const pair = await pairFrom(file, read, note);
    const ask = oneOf(options, 'ask', Object.keys(questions) as Question[]) ?? 'shape';
    const axes = axesFrom(options, ask, pair, file);
    const fixed = fixedOptions(options, ask, axes);
    const count = rowCount(axes);
    if (ask !== 'shape') needStiffness(file, pair);
    if (options.working) note(t('calc.sweep.noWorkings'));
    const names = [...axes.map(({ field }) => field), ...questions[ask].columns, 'problem'];
    const heading = `${csvLine(names)}\n`;
    if (!options.json) write(options.csv ? asCsvFile(heading) : heading);
    await sweepOnAllCores({ pair, axes, ask, fixed }, count, row =>
      write(
        options.json
          ? `${JSON.stringify(Object.fromEntries(names.map((name, i) => [name, row[i]])))}\n`
          : `${csvLine(row)}\n`,
      ),
    );
    return null;
  },
};

function axesFrom(options: CommandInput['options'], ask: Question, pair: Pair, file: string): Axis[] {
  const own = optionsOf(ask);
  const accepted = [...Object.keys(own), ...numberFields(pair)];
  const given = Array.isArray(options.vary) ? options.vary.map(String) : [];
  if (given.length === 0) throw new InputFault(t('calc.vary.missing'));
  const axes = given.map(readAxis);
  axes.forEach(({ field, from, step, count }, i) => {
    if (!accepted.includes(field)) {
      const listed = new Set(accepted.map(each => each.replaceAll(/\[\d+\]/g, '[N]')));
      const values = { field, file, ask, accepted: [...listed].join(', ') };
      throw new InputFault(t('calc.vary.noNumber', values));
    }
    if (axes.findIndex(axis => axis.field === field) < i) {
      throw new InputFault(t('calc.vary.twice', { field }));
    }
    const range = Object.hasOwn(own, field) ? own[field] : null;
    const to = from + step * (count - 1);
    if (range && !(from >= range.from && to <= range.to * (1 + 1e-12))) {
      const given = { field, from, to: Number(to.toPrecision(12)) };
      throw new InputFault(t('calc.vary.outside', { ...given, accepted: acceptedIn(range) }));
    }
  });
  return axes;
}

function fixedOptions(
  options: CommandInput['options'],
  ask: Question,
  axes: readonly Axis[],
): Record<string, number> {
  const own = optionsOf(ask);
  const fixed: Record<string, number> = {};
  for (const field of CARVE) {
    const name = rowOf(field).option as string;
    if (options[name] === undefined) continue;
    if (!Object.hasOwn(own, name)) {
      const accepted = Object.keys(own).join(', ') || t('calc.sweep.nothing');
      throw new InputFault(t('calc.sweep.notAsked', { option: name, ask, accepted }));
    }
    if (axes.some(({ field }) => field === name)) {
      throw new InputFault(t('calc.sweep.variedToo', { option: name }));
    }
    // What a press and what a ski in its groove may carry are two ranges of one option.
    fixed[name] =
      field === 'loadN'
        ? oneNumber(options, name, own[name], own[name].usual)
        : (saidBy(options, [field])[field] as number);
  }
  return fixed;
}

/** What no row could answer is said once and before the first. */
function needStiffness(file: string, pair: Pair): void {
  if (asking(file, () => bendingOf(skiOf(pair))) === null) {
    throw lacking(file, { key: 'flex.needsBending' });
  }
}
