import { computed, signal } from '@preact/signals';
import {
  type Category,
  type Edition,
  EditionError,
  editions,
  readEdition,
} from '../../../core/rules/index.ts';
import { getHost } from '../../host/index.ts';
import { changeCourse, changeRules, course, report, rules } from '../../state/index.ts';

/** Who races: limits differ by it. Belongs to the set and is shared by every place that checks rules. */
export const category = computed<Category>(() => course.value.category);

export function chooseCategory(wanted: Category): void {
  changeCourse('Category', before => ({ ...before, category: wanted }));
}

/** Editions to choose from: the person's own first, then those that come with the program. */
export const knownEditions = computed<readonly Edition[]>(() => [...rules.value.opened, ...editions]);

export const edition = computed<Edition>(
  () => knownEditions.value.find(each => each.edition === rules.value.edition) ?? editions[0]!,
);

export function chooseEdition(name: string): void {
  if (name !== edition.value.edition) changeRules('Edition', () => ({ edition: name }));
}

/** Whether the race is of a lower level, for which an edition may ease a length. */
export const lowerLevel = computed(() => rules.value.lowerLevel);

export function chooseLowerLevel(wanted: boolean): void {
  changeRules('Lower-level race', () => ({ lowerLevel: wanted }));
}

/** Whether the edition chosen eases anything there. */
export const easesLowerLevel = computed(() =>
  edition.value.limits.some(limit => limit.lowerLevelTolerance !== undefined),
);

export const isOwn = (each: Edition): boolean => rules.value.opened.includes(each);

/** Why the last edition file could not be read, field by field. */
export const editionProblems = signal<{ readonly file: string; readonly lines: readonly string[] } | null>(
  null,
);

/** Takes in an edition file; one of the same label replaces the one opened before. */
export function takeEdition(file: { readonly name: string; readonly text: string }): void {
  try {
    const read = readEdition(file.text);
    // A label that is taken would hide one edition behind the other.
    const label = editions.some(each => each.edition === read.edition)
      ? `${read.edition} (${file.name})`
      : read.edition;
    changeRules(`Open edition ${label}`, ({ opened }) => ({
      opened: [{ ...read, edition: label }, ...opened.filter(each => each.edition !== label)],
      edition: label,
    }));
    editionProblems.value = null;
    report(
      `${file.name}: edition "${label}" opened, ${read.limits.length} ${read.limits.length === 1 ? 'limit' : 'limits'}`,
    );
  } catch (error) {
    if (!(error instanceof EditionError)) throw error;
    const [first, ...more] = error.problems;
    editionProblems.value = { file: file.name, lines: error.problems };
    report(
      `${file.name} is no edition of limits. ${first}${more.length > 0 ? ` (and ${more.length} more)` : ''}`,
      'error',
    );
  }
}

/** Asks for an edition file. */
export async function openEdition(): Promise<void> {
  try {
    for (const file of await getHost().open('skis')) takeEdition(file);
  } catch (error) {
    report((error as Error).message, 'error');
  }
}
