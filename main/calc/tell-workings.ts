import { type Balance, balanceSides, type Working, type WorkingValue } from '../../core/working/index.ts';
import { toldAll } from './words.ts';

/** What a working says beside its formula, in words. */
export const noteOf = ({ note = '' }: Pick<Working, 'note'>): string =>
  typeof note === 'string' ? note : toldAll(note);

/** Workings in words: the formula, the numbers put in, the result, the source. */
export function tellWorkings(workings: readonly Working[]): string {
  return workings.map(tell).join('\n');
}

function tell(working: Working): string {
  const { title, formula, solved, inputs, result, source, status } = working;
  const lines = [
    `${title} = ${shown(result)}`,
    ...(formula ? [`  ${formula}`] : []),
    ...(solved ? [`  ${solved.left} = ${solved.right}`, `  ${solvedWords(working, solved)}`] : []),
    ...inputs.map(input => {
      const from = input.from ? ` (${input.from})` : '';
      return `    ${input.name} = ${shown(input)}: ${input.meaning}${from}`;
    }),
    ...(working.note ? [`  ${noteOf(working)}`] : []),
    `  Source: ${source} [${status}]`,
  ];
  return `${lines.join('\n')}\n`;
}

/** How a solved number was solved and how far its balance is left open. */
function solvedWords(working: Working, solved: Balance): string {
  const { left, right, residual } = balanceSides(working, solved);
  const of = (value: number) => shown({ value, unit: solved.unit });
  const apart = of(Number(Math.abs(residual).toPrecision(2)));
  return `Solved ${solved.by}, from the balance of ${solved.of}: ${of(left)} against ${of(right)}, left ${apart} apart.`;
}

/** Six figures are beyond what a tape supports and short enough to read; `--json` keeps them all. */
function shown({ value, unit }: WorkingValue): string {
  return `${Number(value.toPrecision(6))}${unit === '1' ? '' : ` ${unit}`}`;
}
