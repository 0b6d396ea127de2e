import type { PlainKey, Sentence } from '../language/index.ts';
import type { WorkingInput } from './working.ts';

/**
 * One number put into a working: its name in the formula, its symbol in TeX, what it is (a key, or a sentence where
 * there is more to say), its SI value and unit, and where it came from.
 */
export function input(
  name: string,
  symbol: string,
  meaning: PlainKey | Sentence,
  value: number,
  unit: string,
  from?: WorkingInput['from'],
): WorkingInput {
  const said: Sentence = typeof meaning === 'string' ? { key: meaning } : meaning;
  return { name, symbol, meaning: said, value, unit, ...(from !== undefined && { from }) };
}
