import type { ParseArgsOptionsConfig } from 'node:util';
import { NAMED_SNOWS } from '../../core/carve/index.ts';
import { type Field, rowOf, type Said, unitSaid } from '../../core/conditions/index.ts';
import type { CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { acceptedIn, numberIn, type Range } from './option.ts';
import { t } from './words.ts';

/** Options of the conditions that a command takes, from their rows in the table. */
export const conditionOptions = (fields: readonly Field[]): ParseArgsOptionsConfig =>
  Object.fromEntries(fields.map(field => [optionOf(field), { type: 'string' }]));

/** What is accepted of a condition. */
export function rangeOf(field: Field): Range {
  const { least, most, whole } = rowOf(field);
  return { unit: unitSaid(field), from: least, to: most, ...(whole && { whole }) };
}

/** Conditions with values that have a name. */
const NAMED: Partial<Record<Field, readonly { readonly name: string; readonly value: number }[]>> = {
  hardnessNPerMm3: NAMED_SNOWS.map(({ name, hardnessNPerMm3: value }) => ({ name, value })),
};

/**
 * The conditions given as options, in the units they are said in.
 *
 * @throws InputFault naming what was given and what is accepted
 */
export function saidBy(options: CommandInput['options'], fields: readonly Field[]): Partial<Said> {
  return Object.fromEntries(
    fields.flatMap(field => {
      const given = options[optionOf(field)];
      return typeof given === 'string' ? [[field, readValue(field, given.trim())]] : [];
    }),
  );
}

function readValue(field: Field, text: string): number {
  const named = NAMED[field] ?? [];
  const range = rangeOf(field);
  const value = named.find(({ name }) => name === text.toLowerCase())?.value ?? numberIn(text, range);
  if (value !== null) return value;
  const values = { option: optionOf(field), given: JSON.stringify(text), accepted: accepted(field) };
  throw new InputFault(t('calc.option.notAccepted', values));
}

function accepted(field: Field): string {
  const names = (NAMED[field] ?? []).map(({ name }) => name);
  return [...names, acceptedIn(rangeOf(field))].join(names.length > 1 ? ', ' : '');
}

/** What `--help` says of them: one line each, with what is accepted and what is usual. */
export function conditionHelp(fields: readonly Field[]): string {
  const width = Math.max(...fields.map(field => optionOf(field).length));
  return fields
    .map(field => {
      const { label, usual } = rowOf(field);
      const name = NAMED[field]?.find(({ value }) => value === usual)?.name;
      const values = { label: t(label), accepted: accepted(field) };
      const told =
        usual === null
          ? t('calc.help.condition', values)
          : t('calc.help.conditionUsual', { ...values, usual: name ?? usual });
      return `  --${optionOf(field).padEnd(width)}  ${told}`;
    })
    .join('\n');
}

function optionOf(field: Field): string {
  const { option } = rowOf(field);
  if (option === undefined) throw new RangeError(field);
  return option;
}
