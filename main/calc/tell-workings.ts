import type { Working, WorkingValue } from '../../core/working/index.ts';

/** Workings in words: the formula, the numbers put in, the result, the source. */
export function tellWorkings(workings: readonly Working[]): string {
  return workings.map(tell).join('\n');
}

function tell(working: Working): string {
  const { title, formula, inputs, result, note, source, status } = working;
  const lines = [
    `${title} = ${shown(result)}`,
    ...(formula ? [`  ${formula}`] : []),
    ...inputs.map(input => {
      const from = input.from ? ` (${input.from})` : '';
      return `    ${input.name} = ${shown(input)}: ${input.meaning}${from}`;
    }),
    ...(note ? [`  ${note}`] : []),
    `  Source: ${source} [${status}]`,
  ];
  return `${lines.join('\n')}\n`;
}

/** Six figures are beyond what a tape supports and short enough to read; `--json` keeps them all. */
function shown({ value, unit }: WorkingValue): string {
  return `${Number(value.toPrecision(6))}${unit === '1' ? '' : ` ${unit}`}`;
}
