import { group } from 'd3';
import {
  FAULT_HEADING,
  type Pair,
  type Sheet,
  type SheetPair,
  type SheetProblem,
} from '../../core/pair/index.ts';
import { readCsvRows, writeCsvRows } from '../../core/table/index.ts';
import { inWords, ownerOf, type RackEntry, t, withOwner } from '../state/index.ts';
import type { ReadSheet } from './reading.ts';

/** A technician's sheet, read and looked over, before anything is taken in. */
export interface SheetImport {
  readonly fileName: string;
  /** What reading the file took for granted. */
  readonly note?: string | undefined;
  readonly sheet: Sheet;
  /** Pairs as they would stand in the rack, each with the line it came from. */
  readonly pairs: readonly { readonly row: number; readonly pair: Pair; readonly known: boolean }[];
  /** Everything said of one line: problems, guesses and what is odd. */
  readonly lines: readonly SheetLine[];
  /** Lines that give no pair at all. */
  readonly refused: readonly number[];
}

export interface SheetLine {
  readonly row: number;
  readonly kind: 'not taken in' | 'field left out' | 'guess' | 'odd';
  readonly message: string;
}

/** A sheet that was read; `known` marks pairs the rack has already, to the last measurement. */
export function lookOver(
  fileName: string,
  { sheet, odd }: ReadSheet,
  rack: readonly RackEntry[],
  note?: string,
): SheetImport {
  const inRack = new Set(rack.map(entry => sameAs(entry.pair)));
  const pairs = sheet.pairs.map(each => {
    const pair = pairOf(each);
    return { row: each.row, pair, known: inRack.has(sameAs(pair)) };
  });
  const taken = new Set(pairs.map(each => each.row));
  const lines: SheetLine[] = [
    ...sheet.problems.map(
      (problem): SheetLine => ({
        row: problem.row,
        kind: problem.imported ? 'field left out' : 'not taken in',
        // A file of anything else has faults by the hundred thousand; the words are made for those that are shown.
        get message() {
          return inWords(problem);
        },
      }),
    ),
    ...sheet.guesses.map(
      ({ row, guess }): SheetLine => ({
        row,
        kind: 'guess',
        get message() {
          return inWords(guess);
        },
      }),
    ),
    ...odd.map(
      ({ row, name, remark }): SheetLine => ({
        row,
        kind: 'odd',
        message: t('pair.oddEntry', { name, remark }),
      }),
    ),
  ];
  return {
    fileName,
    note,
    sheet,
    pairs,
    lines: lines.toSorted((one, other) => one.row - other.row),
    refused: [...new Set(sheet.problems.map(each => each.row))].filter(row => !taken.has(row)),
  };
}

function pairOf({ pair, owner, extra }: SheetPair): Pair {
  const demo = /^demo\b/i.test(pair.notes ?? '') ? { demo: true } : {};
  const cells = Object.keys(extra).length > 0 ? { sheetCells: extra } : {};
  return { ...withOwner(pair, owner), ...demo, ...cells } as Pair;
}

const sameAs = (pair: Pair): string =>
  [
    pair.name.trim().toLowerCase(),
    ownerOf(pair).toLowerCase(),
    pair.lengthMm,
    pair.contactLengthMm,
    pair.tipWidthMm,
    pair.waistWidthMm,
    pair.tailWidthMm,
  ].join('|');

/** Rack entries of what is taken in, each pair with an id so that its tune log stays with it. */
export const entriesOf = (
  pairs: SheetImport['pairs'],
  newId: () => string,
  inRackFile: boolean,
): RackEntry[] =>
  pairs.map(({ pair }) => {
    const id = newId();
    const named = { ...pair, id } as Pair;
    // Invented pairs are nothing to lose, as with those the program comes with.
    return { id, pair: named, saved: pair.demo && !inRackFile ? named : null, inRackFile };
  });

/**
 * The lines at fault as a sheet of their own, as they stood, with a last column that says why: mended in
 * place, the file can be read again.
 */
export function faultSheet({ sheet }: SheetImport): string {
  const { separator, columns, problems } = sheet;
  const byLine = group(problems, each => each.row);
  const lines = [...byLine.values()].map(reported => ({
    fields: readCsvRows(reported[0]!.raw, separator).rows[0]?.fields ?? [],
    why: reported.map(whyOf).join(' · '),
  }));
  const kept = columns.map(column => column.heading);
  const at = kept.indexOf(FAULT_HEADING);
  // The reasons of a file read again give way to the new ones.
  const without = (cells: readonly string[]) => cells.filter((_, index) => index !== at);
  const wide = Math.max(0, ...[kept, ...lines.map(line => line.fields)].map(cells => without(cells).length));
  const padded = (cells: readonly string[]) => {
    const left = without(cells);
    return Array.from({ length: wide }, (_, index) => left[index] ?? '');
  };
  return writeCsvRows(
    [[...padded(kept), FAULT_HEADING], ...lines.map(({ fields, why }) => [...padded(fields), why])],
    separator,
  );
}

const whyOf = (problem: SheetProblem) =>
  problem.imported ? t('files.takenWithoutField', { fault: problem }) : inWords(problem);
