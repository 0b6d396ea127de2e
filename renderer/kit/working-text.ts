import { DEGREE } from '../../core/units/index.ts';
import {
  type Balance,
  balanceSides,
  type Working,
  type WorkingValue,
  workingInWords,
} from '../../core/working/index.ts';
import { inWords, t } from '../state/index.ts';

/** SI units as they are printed. */
const PRINTED: Record<string, string> = {
  '1': '',
  'N*m^2': 'N·m²',
  'N*m': 'N·m',
  'm^2': 'm²',
  'm^3': 'm³',
  'm^4': 'm⁴',
  'N/m^2': 'N/m²',
  'N/m^3': 'N/m³',
  'm/s^2': 'm/s²',
  'kg/m^3': 'kg/m³',
  '1/m': '1/m',
};

const printedUnit = (unit: string): string => PRINTED[unit] ?? unit;

/** Values of a working with six significant figures, angles also in degrees. */
export function printedValue({ value, unit }: WorkingValue): string {
  const number = (each: number) => String(Number(each.toPrecision(6))).replace('-', '\u2212');
  const printed = printedUnit(unit);
  const text = printed ? `${number(value)}\u00a0${printed}` : number(value);
  return unit === 'rad' ? `${text} (${number(value / DEGREE)}°)` : text;
}

const KEY_OF_WORKING = /^(boot|carve|course|flex|line|rules|run|shape)\.\w/;

/**
 * Where an input comes from, as a person reads it: a field of the pair file by its name, another working by
 * its title where it is shown beside this one.
 */
export function originText(from: string, beside: readonly Working[]): string {
  const other = beside.find(each => each.key === from);
  if (other) return t('kit.seeWorking', { title: inWords(other.title) });
  return KEY_OF_WORKING.test(from) ? t('kit.ownWorking') : from;
}

/** How a solved number was solved, and how far apart both sides of its balance are left. */
export function solvedText(working: Working, solved: Balance): string {
  const { left, right, residual } = balanceSides(working, solved);
  const side = (value: number) => printedValue({ value, unit: solved.unit });
  const apart = printedValue({ value: Number(Math.abs(residual).toPrecision(2)), unit: solved.unit });
  const { by, of } = solved;
  return t('kit.solvedBy', { by, of, left: side(left), right: side(right), apart });
}

/** The lines that say how the result comes about: its formula, or the balance it was solved from. */
function equationLines(working: Working): string[] {
  const { formula, solved } = working;
  return [
    ...(formula ? [`  ${formula}`] : []),
    ...(solved
      ? [
          `  ${solved.left} = ${solved.right}`,
          `  ${t('kit.solvedLine', { how: solvedText(working, solved) })}`,
        ]
      : []),
  ];
}

/** A working as plain text, for a file or a message; `beside` are those printed with it. */
export function workingText(working: Working, beside: readonly Working[] = []): string {
  const { title, inputs, note, source } = workingInWords(working, inWords);
  const lines = [
    title,
    '',
    ...equationLines(working),
    '',
    ...inputs.map(
      input =>
        `  ${input.name} = ${printedValue(input)}   ${input.meaning}${input.from ? ` [${originText(input.from, beside)}]` : ''}`,
    ),
    '',
    `  ${t('kit.resultLine', { value: printedValue(working.result) })}`,
    ...(note ? ['', `  ${note}`] : []),
    '',
    `  ${t('kit.sourceLine', { source, status: statusText(working.status) })}`,
    '',
  ];
  return lines.join('\n');
}

/** How well a source is established, as a person reads it. */
export const statusText = (status: Working['status']): string => t(`kit.status.${status}`);
