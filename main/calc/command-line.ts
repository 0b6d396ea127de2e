import type { ParseArgsOptionsConfig } from 'node:util';
import { type Working, workingInWords, workingTex } from '../../core/working/index.ts';
import { common, readArguments } from './arguments.ts';
import type { Command, Report } from './command.ts';
import { asksForHelp, commands, isCommand } from './commands.ts';
import { conditionHelp, conditionOptions, saidBy } from './condition-options.ts';
import { InputFault } from './fault.ts';
import { readInputFile, textOf } from './input-file.ts';
import { plain, processStreams, type Streams } from './streams.ts';
import { formatCsv, formatTable } from './table.ts';
import { tellWorkings } from './tell-workings.ts';
import { t, told } from './words.ts';

/**
 * Runs one command.
 *
 * @returns the exit code: 0 done, 2 the input is at fault (one line on `err`), 1 our fault
 */
export async function calc(argv: readonly string[], streams: Streams = processStreams()): Promise<number> {
  try {
    await run(argv, streams);
    return 0;
  } catch (error) {
    if (error instanceof InputFault) {
      streams.err(`${plain(error.message.replaceAll('\n', ' '))}\n`);
      return 2;
    }
    const what = String(error instanceof Error ? error.stack : error);
    streams.err(`${t('calc.failed', { what })}\n`);
    return 1;
  }
}

async function run([name, ...rest]: readonly string[], { out, err, stdin }: Streams): Promise<void> {
  if (name === undefined || asksForHelp(name)) return out(overview());
  if (!isCommand(name)) {
    const known = Object.keys(commands).join(', ');
    throw new InputFault(t('calc.unknownCommand', { command: name, commands: known }));
  }
  const command: Command = commands[name];
  const { values, positionals } = readArguments(name, allOptions(command), rest);
  if (values.help) return out(help(name, command));
  if (values.json && values.csv) throw new InputFault(t('calc.csvAndJson'));
  const [least, most] = command.files;
  if (positionals.length < least || positionals.length > most) {
    const wanted =
      least === most
        ? String(least)
        : most === Infinity
          ? t('calc.atLeast', { least })
          : t('calc.range', { from: least, to: most });
    const given = positionals.length;
    const usage = t(command.usage);
    throw new InputFault(t('calc.filesGiven', { command: name, given, wanted, usage }));
  }
  const note = (line: string) => err(`${plain(line)}\n`);
  const report = await command.run({
    files: positionals,
    options: values,
    said: saidBy(values, command.conditions ?? []),
    write: out,
    note,
    progress: line => {
      if (!values.json) err(`${line}\n`);
    },
    read: async file =>
      file === '-' ? textOf(t('calc.standardInput'), await stdin(), note) : readInputFile(file, note),
  });
  if (!report) return;
  if (values.csv && values.working) note(t('calc.csvWithoutWorkings'));
  out(print(name, report, values));
}

function print(name: string, report: Report, options: { json?: unknown; csv?: unknown; working?: unknown }) {
  if (options.json) {
    const document = options.working
      ? { ...report.json, workings: report.workings.map(withTex) }
      : report.json;
    return `${JSON.stringify(document, null, 2)}\n`;
  }
  if (options.csv) {
    if (!report.csv) throw new InputFault(t('calc.noCsv', { command: name }));
    return formatCsv(report.csv);
  }
  const tables = report.tables.map(formatTable);
  const words = report.words ? [`${report.words}\n`] : [];
  return plain([...tables, ...words, ...(options.working ? [tellWorkings(report.workings)] : [])].join('\n'));
}

/** Workings in a document carry their equation set in TeX, for whoever shows them. */
const withTex = (working: Working) => ({
  ...workingInWords(working, told),
  tex: workingTex(working),
});

function overview(): string {
  const lines = Object.entries(commands).map(([name, { usage, summary }]) => [
    `  ${name} ${t(usage)}`,
    t(summary),
  ]);
  const width = Math.max(...lines.map(([left]) => left.length));
  return [
    t('calc.help.usage'),
    '',
    ...lines.map(([left, right]) => `${left.padEnd(width)}  ${right}`),
    '',
    t('calc.help.every'),
    '',
  ].join('\n');
}

const allOptions = ({ options, conditions = [] }: Command): ParseArgsOptionsConfig => ({
  ...options,
  ...conditionOptions(conditions),
});

function help(name: string, { usage, summary, options, conditions = [], notes }: Command): string {
  const every: ParseArgsOptionsConfig = { ...options, ...common };
  const names = Object.entries(every).map(([option, { type }]) =>
    type === 'string' ? t('calc.help.value', { option }) : `--${option}`,
  );
  return [
    `turnwright ${name} ${t(usage)}`,
    t(summary),
    '',
    t('calc.help.options', { options: names.join('  ') }),
    ...(conditions.length > 0 ? [conditionHelp(conditions)] : []),
    ...(notes ? ['', told(notes)] : []),
    '',
  ].join('\n');
}
