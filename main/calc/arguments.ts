import { type ParseArgsOptionsConfig, parseArgs } from 'node:util';
import { InputFault } from './fault.ts';
import { t } from './words.ts';

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
      throw new InputFault(t('calc.option.repeated', { option: name, times }));
    }
  }
  return { values, positionals };
}

function parsed(command: string, options: ParseArgsOptionsConfig & typeof common, args: readonly string[]) {
  const config = {
    args: withNegativeValues(args, options),
    options,
    allowPositionals: true,
    tokens: true,
  } as const;
  // Looked over here first, so that nothing has to be read out of the messages of the strict reader.
  for (const token of parseArgs({ ...config, strict: false }).tokens) {
    if (token.kind !== 'option') continue;
    const { name, rawName, value, inlineValue } = token;
    if (!Object.hasOwn(options, name)) {
      const accepted = Object.keys(options).join(', --');
      throw new InputFault(t('calc.option.unknown', { command, option: rawName, accepted }));
    }
    if (options[name as keyof typeof options].type === 'boolean') {
      if (value !== undefined) throw new InputFault(t('calc.option.noValue', { option: name }));
    } else if (value === undefined || (!inlineValue && /^-./.test(value))) {
      throw new InputFault(t('calc.option.valueMissing', { option: name }));
    }
  }
  return parseArgs({ ...config, strict: true });
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
