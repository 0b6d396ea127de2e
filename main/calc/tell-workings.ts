import type { Working } from '../../core/working/index.ts';

/** Workings in words: the formula, the numbers put in, the result, the source. */
export function tellWorkings(workings: readonly Working[]): string {
  return workings.map(tell).join('\n');
}

function tell(working: Working): string {
  const { title, formula, inputs, result, note, source, status } = working;
  const lines = [
    `${title} = ${result.value} ${result.unit}`,
    ...(formula ? [`  ${formula}`] : []),
    ...inputs.map(input => {
      const from = input.from ? ` (${input.from})` : '';
      return `    ${input.name} = ${input.value} ${input.unit}: ${input.meaning}${from}`;
    }),
    ...(note ? [`  ${note}`] : []),
    `  Source: ${source} [${status}]`,
  ];
  return `${lines.join('\n')}\n`;
}
