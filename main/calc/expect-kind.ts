import { identify, type TextKind } from '../../core/kind/index.ts';
import { InputFault } from './fault.ts';

const NAMES: Readonly<Record<TextKind, string>> = {
  pair: 'a pair',
  rack: 'a rack',
  edition: 'an edition of limits',
  gates: 'a set of gates',
  bench: 'bench readings',
  slope: 'a slope',
  programme: 'turns',
  sheet: 'a sheet of pairs',
};

/**
 * Lets a text pass that is of the kind wanted, or that does not say what it is: the reader of that kind then
 * tells what is wrong with it.
 *
 * @throws InputFault naming the file, what it holds and what is accepted
 */
export function expectKind(file: string, text: string, wanted: TextKind): string {
  const found = identify(text, file);
  if (!found.ok || found.kind === wanted) return text;
  throw new InputFault(`${file}: ${NAMES[found.kind]} found; accepted: ${NAMES[wanted]}`);
}
