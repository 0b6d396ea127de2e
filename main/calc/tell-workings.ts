import {
  type Balance,
  balanceSides,
  type Working,
  type WorkingValue,
  workingInWords,
} from '../../core/working/index.ts';
import { t, told } from './words.ts';

/** Workings in words: the formula, the numbers put in, the result, the source. */
export function tellWorkings(workings: readonly Working[]): string {
  return workings.map(tell).join('\n');
}

function tell(working: Working): string {
  const { title, formula, inputs, result, note, source, status } = workingInWords(working, told);
  const { solved } = working;
  const lines = [
    `${title} = ${shown(result)}`,
    ...(formula ? [`  ${formula}`] : []),
    ...(solved ? [`  ${solved.left} = ${solved.right}`, `  ${solvedWords(working, solved)}`] : []),
    ...inputs.map(input => {
      const from = input.from ? ` (${input.from})` : '';
      return `    ${input.name} = ${shown(input)}: ${input.meaning}${from}`;
    }),
    ...(note ? [`  ${note}`] : []),
    `  ${t('calc.source', { source, status: { key: `calc.status.${status}` } })}`,
  ];
  return `${lines.join('\n')}\n`;
}

/** How a solved number was solved and how far its balance is left open. */
function solvedWords(working: Working, solved: Balance): string {
  const { left, right, residual } = balanceSides(working, solved);
  const side = (value: number) => shown({ value, unit: solved.unit });
  const apart = side(Number(Math.abs(residual).toPrecision(2)));
  const { by, of } = solved;
  return t('calc.solved', { by, of, left: side(left), right: side(right), apart });
}

/** Six figures are beyond what a tape supports and short enough to read; `--json` keeps them all. */
function shown({ value, unit }: WorkingValue): string {
  return `${Number(value.toPrecision(6))}${unit === '1' ? '' : ` ${unit}`}`;
}
