import { type Pair, readPair, type Ski, skiOf } from '../../core/pair/index.ts';
import type { CommandInput } from './command.ts';
import { expectKind } from './expect-kind.ts';
import { InputFault } from './fault.ts';

/**
 * The pair a file holds; what has to be known of it beside that goes to `note`.
 *
 * @throws InputFault naming the file and its first faulty field
 */
export async function pairFrom(
  file: string,
  read: CommandInput['read'],
  note: CommandInput['note'] = () => {},
): Promise<Pair> {
  const result = readPair(expectKind(file, await read(file), 'pair'));
  if (result.ok) {
    for (const each of result.notes) note(`${file}: ${each}`);
    return result.pair;
  }
  const [first, ...more] = result.problems;
  const others = more.length > 0 ? ` (and ${more.length} more)` : '';
  throw new InputFault(`${file}: ${first.message}${others}`);
}

/**
 * One ski of that pair, in SI.
 *
 * @throws InputFault as `pairFrom` does
 */
export async function skiFrom(
  file: string,
  read: CommandInput['read'],
  note?: CommandInput['note'],
): Promise<Ski> {
  return skiOf(await pairFrom(file, read, note));
}
