import { type ParseArgsOptionsConfig, parseArgs } from 'node:util';
import { InputFault } from './fault.ts';

/** Options every command takes. */
export const common = {
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  working: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** @throws InputFault when an option is unknown, lacks its value or is given more often than it may be */
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
    const [problem] = (error as Error).message.split('. ');
    throw new InputFault(
      `${command}: ${problem}; accepted options are --${Object.keys(options).join(', --')}`,
    );
  }
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
