import { signal } from '@preact/signals';
import { editions } from '../../core/rules/index.ts';
import { changeRules, faultsInWords, inWords, report, t } from '../state/index.ts';
import { READ, type ReadEdition } from './reading.ts';

/** Why the last edition file could not be read, field by field. */
export const editionProblems = signal<{ readonly file: string; readonly lines: readonly string[] } | null>(
  null,
);

/** Takes in an edition file; one of the same label replaces the one opened before. */
export function takeEdition(
  file: { readonly name: string; readonly text: string },
  found: ReadEdition = READ.edition(file.text),
): void {
  if (found.ok) {
    const read = found.edition;
    // A label that is taken would hide one edition behind the other.
    const label = editions.some(each => each.edition === read.edition)
      ? `${read.edition} (${file.name})`
      : read.edition;
    changeRules(t('files.editionStep', { label }), ({ opened }) => ({
      opened: [{ ...read, edition: label }, ...opened.filter(each => each.edition !== label)],
      edition: label,
    }));
    editionProblems.value = null;
    report(t('files.editionOpened', { name: file.name, label, count: read.limits.length }));
  } else {
    const { faults } = found;
    editionProblems.value = { file: file.name, lines: faults.map(inWords) };
    report(t('files.noEdition', { name: file.name, fault: faultsInWords(faults) }), 'error');
  }
}
