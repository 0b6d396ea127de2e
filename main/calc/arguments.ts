import { type ParseArgsOptionsConfig, parseArgs } from 'node:util';
import { InputFault } from './fault.ts';

/** Options every command takes. */
export const common = {
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  working: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

/**
 * Files and options of a command, still as text.
 *
 * @throws InputFault when an option is unknown, lacks its value or is given more often than it may be
 */
export function readArguments(command: string, own: ParseArgsOptionsConfig, args: readonly string[]) {
  const options = { ...own, ...common };
  const { values, positionals, tokens } = parsed(command, options, args);
  const given = tokens.flatMap(token => (token.kind === 'option' ? [token.name] : []));
  for (const [name, { type, multiple }] of Object.entries<ParseArgsOptionsConfig[string]>(options)) {
    const times = given.filter(each => each === name).length;
    // The last one would win without a word, and a script's earlier value be lost.
    if (type === 'string' && !multiple && times > 1) {
      throw new InputFault(`--${name}: is given ${times} times; give it once`);
    }
  }
  return { values, positionals };
}

function parsed(command: string, options: ParseArgsOptionsConfig & typeof common, args: readonly string[]) {
  try {
    return parseArgs({
      args: withNegativeValues(args, options),
      options,
      allowPositionals: true,
      strict: true,
      tokens: true,
    });
  } catch (error) {
    throw new InputFault(complaint(command, options, error as NodeJS.ErrnoException));
  }
}

/** The reader's own words, where it is not told by its code what went wrong, run to several sentences. */
function complaint(command: string, options: ParseArgsOptionsConfig, error: NodeJS.ErrnoException): string {
  const name = /'(?:-\w, )?--([\w-]+)/.exec(error.message)?.[1] ?? '';
  if (error.code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE' && Object.hasOwn(options, name)) {
    return options[name].type === 'string'
      ? `--${name}: has no value; give --${name} VALUE`
      : `--${name}: takes no value; give --${name} alone`;
  }
  const [problem] = error.message.split('. ');
  return `${command}: ${problem}; accepted options are --${Object.keys(options).join(', --')}`;
}

/** `--fore -20` means what it says: a number with a minus sign after an option is its value. */
function withNegativeValues(args: readonly string[], options: ParseArgsOptionsConfig): string[] {
  const joined: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const takesValue = args[i].startsWith('--') && options[args[i].slice(2)]?.type === 'string';
    if (takesValue && /^-[\d.]/.test(args[i + 1] ?? '')) joined.push(`${args[i]}=${args[++i]}`);
    else joined.push(args[i]);
  }
  return joined;
}
