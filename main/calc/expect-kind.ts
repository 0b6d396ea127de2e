import { identify, type TextKind } from '../../core/kind/index.ts';
import { InputFault } from './fault.ts';
import { t } from './words.ts';

/**
 * Lets a text pass that is of the kind wanted, or that does not say what it is: the reader of that kind then
 * tells what is wrong with it.
 *
 * @throws InputFault naming the file, what it holds and what is accepted
 */
export function expectKind(file: string, text: string, wanted: TextKind): string {
  const found = identify(text, file);
  if (!found.ok || found.kind === wanted) return text;
  const kinds = { found: t(`kind.${found.kind}`), wanted: t(`kind.${wanted}`) };
  throw new InputFault(t('calc.kindFound', { file, ...kinds }));
}
