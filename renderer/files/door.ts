import { identify, type TextKind } from '../../core/kind/index.ts';
import { type FileKind, getHost } from '../host/index.ts';
import { changeView, errorWords, report, t } from '../state/index.ts';
import { takeReadings } from './bench-files.ts';
import { takeCourse } from './course-files.ts';
import { takeEdition } from './edition-files.ts';
import type { Incoming } from './incoming.ts';
import { takePair, takeRack } from './rack-files.ts';
import { takeProfile, takeProgramme } from './run-files.ts';
import { lookAtSheet } from './sheet-files.ts';

const TAKE: Readonly<Record<TextKind, (file: Incoming) => void>> = {
  pair: takePair,
  rack: takeRack,
  edition: takeEdition,
  gates: file => {
    takeCourse(file);
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
  const found = identify(file.text, file.name);
  const kind = found.ok ? found.kind : wanted;
  if (kind) TAKE[kind](file);
  else if (!found.ok) report(t('files.atFault', { name: file.name, fault: found.fault }), 'error');
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
