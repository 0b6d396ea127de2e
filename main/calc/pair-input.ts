import { type Pair, readPair, type Ski, skiOf } from '../../core/pair/index.ts';
import { say } from '../host/index.ts';
import type { CommandInput } from './command.ts';
import { expectKind } from './expect-kind.ts';
import { faultOf } from './fault.ts';

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
    for (const each of result.notes) note(`${file}: ${say(each)}`);
    return result.pair;
  }
  throw faultOf(file, result.problems);
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
