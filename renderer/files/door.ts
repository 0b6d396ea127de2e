import type { TextKind } from '../../core/kind/index.ts';
import { type FileKind, getHost } from '../host/index.ts';
import { changeView, errorWords, report, t } from '../state/index.ts';
import { takeReadings } from './bench-files.ts';
import { takeCourse } from './course-files.ts';
import { takeEdition } from './edition-files.ts';
import type { Incoming } from './incoming.ts';
import { isLong, readLong } from './long-reading.ts';
import { takePair, takeRack } from './rack-files.ts';
import { type Found, type ReadOf, readText } from './reading.ts';
import { takeProfile, takeProgramme } from './run-files.ts';
import { lookAtSheet } from './sheet-files.ts';

const TAKE: { readonly [K in TextKind]: (file: Incoming, read: ReadOf<K>) => void } = {
  pair: takePair,
  rack: takeRack,
  edition: takeEdition,
  gates: (file, read) => {
    takeCourse(file, read);
    changeView({ question: 'set' });
  },
  bench: takeReadings,
  slope: takeProfile,
  programme: takeProgramme,
  sheet: lookAtSheet,
};

/**
 * Whatever came, however it came, goes where what it holds belongs. Where it does not say what it is, the
 * reader of what was `wanted` says what is wrong with it.
 */
export function importFile(file: Incoming, wanted?: TextKind): void {
  if (isLong(file.text) || underWay !== null) {
    const mine: Promise<void> = (underWay ?? Promise.resolve())
      .then(() => takeLong(file, wanted))
      .finally(() => {
        if (underWay === mine) underWay = null;
      });
    underWay = mine;
  } else take(file, readText(file.text, file.name, wanted));
}

/** What came while something long was being read waits its turn, so that all is taken in as it came. */
let underWay: Promise<void> | null = null;

async function takeLong(file: Incoming, wanted?: TextKind): Promise<void> {
  const { text, name } = file;
  try {
    const found = await readLong({ text, name, wanted });
    if (found) take(file, found);
    else report(t('files.readingStopped', { name }));
  } catch (error) {
    report(t('files.notOpened', { name, why: errorWords(error) }), 'error');
  }
}

function take(file: Incoming, found: Found): void {
  if (found.kind === null) report(t('files.atFault', { name: file.name, fault: found.fault }), 'error');
  // The kind says which reading it is.
  else (TAKE[found.kind] as (file: Incoming, read: unknown) => void)(file, found.read);
}

const CHOOSER: Partial<Record<TextKind, FileKind>> = {
  edition: 'skis',
  gates: 'course',
  bench: 'table',
  sheet: 'table',
  slope: 'table',
  programme: 'table',
};

/** Asks for files, those of what is `wanted` or of every kind, and takes in what is chosen. */
export async function openFiles(wanted?: TextKind): Promise<void> {
  try {
    const files = await getHost().open((wanted && CHOOSER[wanted]) ?? 'any');
    for (const file of files) importFile(file, wanted);
  } catch (error) {
    report(errorWords(error), 'error');
  }
}
