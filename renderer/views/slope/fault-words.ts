import { TableTextError } from '../../../core/table/index.ts';

/** What is wrong with a table, for one line: its first fault, and how many lines more have one. */
export function faultWords(name: string, error: Error): string {
  const where = name === '' ? '' : `${name}, `;
  if (!(error instanceof TableTextError)) return `${where}${error.message}`;
  const [first, ...more] = error.problems;
  const others = more.length === 0 ? '' : ` And ${more.length} more like it.`;
  return `${where}${first}.${others}`;
}
