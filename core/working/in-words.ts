import type { Sentence } from '../language/index.ts';
import type { Balance, Working, WorkingInput } from './working.ts';

/** A working as a person reads it: its words in one language and one system of units, its numbers as they are. */
export interface WorkingInWords extends Omit<Working, 'title' | 'solved' | 'inputs' | 'note' | 'source'> {
  readonly title: string;
  readonly solved?: Omit<Balance, 'of' | 'by'> & { readonly of: string; readonly by: string };
  readonly inputs: readonly InputInWords[];
  readonly note?: string;
  readonly source: string;
}

export interface InputInWords extends Omit<WorkingInput, 'meaning' | 'from'> {
  readonly meaning: string;
  readonly from?: string;
}

/** The words of a working as `say` puts them, bound to whoever reads. */
export function workingInWords(working: Working, say: (sentence: Sentence) => string): WorkingInWords {
  const { title, solved, inputs, note, source, ...rest } = working;
  return {
    ...rest,
    title: say(title),
    ...(solved && { solved: { ...solved, of: say(solved.of), by: say(solved.by) } }),
    inputs: inputs.map(({ meaning, from, ...number }) => ({
      ...number,
      meaning: say(meaning),
      ...(from !== undefined && { from: typeof from === 'string' ? from : say(from) }),
    })),
    ...(note && { note: [note].flat().map(say).join(' ') }),
    source: say(source),
  };
}
