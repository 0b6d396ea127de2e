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
import { told } from './words.ts';

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
    streams.err(`The calculation failed: ${error instanceof Error ? error.stack : error}\n`);
    return 1;
  }
}

async function run([name, ...rest]: readonly string[], { out, err, stdin }: Streams): Promise<void> {
  if (name === undefined || asksForHelp(name)) return out(overview());
  if (!isCommand(name)) {
    throw new InputFault(`command: "${name}" is not known; give one of ${Object.keys(commands).join(', ')}`);
  }
  const command: Command = commands[name];
  const { values, positionals } = readArguments(name, allOptions(command), rest);
  if (values.help) return out(help(name, command));
  if (values.json && values.csv) throw new InputFault('--csv: not together with --json; give one of them');
  const [least, most] = command.files;
  if (positionals.length < least || positionals.length > most) {
    const wanted =
      least === most ? `${least}` : most === Infinity ? `${least} or more` : `${least} to ${most}`;
    throw new InputFault(
      `${name}: ${positionals.length} files given; it takes ${wanted} (${name} ${command.usage})`,
    );
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
      file === '-' ? textOf('standard input', await stdin(), note) : readInputFile(file, note),
  });
  if (!report) return;
  if (values.csv && values.working)
    note('--working: a table as CSV carries none; leave --csv out or use --json');
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
    if (!report.csv) throw new InputFault(`--csv: ${name} has no table; use --json`);
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
  const lines = Object.entries(commands).map(([name, { usage, summary }]) => [`  ${name} ${usage}`, summary]);
  const width = Math.max(...lines.map(([left]) => left.length));
  return [
    'turnwright COMMAND FILE… [options]',
    '',
    ...lines.map(([left, right]) => `${left.padEnd(width)}  ${right}`),
    '',
    'Every command takes --json, --working and --help; --csv where a table is natural. FILE may be - for',
    'standard input. Exit 0 done, 2 the input is at fault, 1 our fault.',
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
    type === 'string' ? `--${option} VALUE` : `--${option}`,
  );
  return [
    `turnwright ${name} ${usage}`,
    summary,
    '',
    `Options: ${names.join('  ')}`,
    ...(conditions.length > 0 ? [conditionHelp(conditions)] : []),
    ...(notes ? ['', notes] : []),
    '',
  ].join('\n');
}
