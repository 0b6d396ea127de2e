import { type GateList, readGates } from '../../core/course/index.ts';
import { FieldError, type FieldFault, plainFault } from '../../core/fault/index.ts';
import { identify, type TextKind } from '../../core/kind/index.ts';
import {
  type OddEntry,
  oddEntries,
  type ReadPair,
  type ReadRack,
  readPair,
  readRack,
  readSheet,
  type Sheet,
} from '../../core/pair/index.ts';
import { type Edition, readEdition } from '../../core/rules/index.ts';

export type ReadEdition =
  | { readonly ok: true; readonly edition: Edition }
  | { readonly ok: false; readonly faults: readonly FieldFault[] };

export interface ReadSheet {
  readonly sheet: Sheet;
  /** Values that no pair is likely to have. */
  readonly odd: readonly OddEntry[];
}

/** How far reading has come, 0 to 1. */
export type Progress = (share: number) => void;

/**
 * What is read of a text of each kind, as plain data, so that it can come from another thread. Tables of two columns and
 * of bench readings are short by what is accepted of them, and read where they are shown.
 */
export const READ = {
  pair: (text: string): ReadPair => readPair(text),
  rack: (text: string, progress?: Progress): ReadRack => readRack(text, progress),
  edition: (text: string): ReadEdition => {
    try {
      return { ok: true, edition: readEdition(text) };
    } catch (error) {
      if (!(error instanceof FieldError)) throw error;
      return { ok: false, faults: [error, ...error.others].map(fault => plainFault(fault)) };
    }
  },
  gates: (text: string): GateList => readGates(text),
  sheet: (text: string, progress?: Progress): ReadSheet => {
    const sheet = readSheet(text, undefined, progress);
    return { sheet, odd: oddEntries(sheet.pairs) };
  },
  bench: () => null,
  slope: () => null,
  programme: () => null,
} as const satisfies Record<TextKind, (text: string, progress?: Progress) => unknown>;

export type ReadOf<K extends TextKind> = ReturnType<(typeof READ)[K]>;

export type Found =
  | { [K in TextKind]: { readonly kind: K; readonly read: ReadOf<K> } }[TextKind]
  /** Neither does it say what it is nor was anything wanted. */
  | { readonly kind: null; readonly fault: FieldFault };

/** What a text is and what is read of it. Where it does not say what it is, it is read as what was `wanted`. */
export function readText(text: string, name: string, wanted?: TextKind, progress?: Progress): Found {
  const found = identify(text, name);
  const kind = found.ok ? found.kind : wanted;
  if (kind) return { kind, read: READ[kind](text, progress) } as Found;
  return { kind: null, fault: (found as Extract<typeof found, { ok: false }>).fault };
}
