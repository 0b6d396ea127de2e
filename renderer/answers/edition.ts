import { computed } from '@preact/signals';
import { type Category, type Edition, editions } from '../../core/rules/index.ts';
import { changeCourse, changeRules, course, rules, t } from '../state/index.ts';

/** Who races: limits differ by it. Belongs to the set and is shared by every place that checks rules. */
export const category = computed<Category>(() => course.value.category);

export function chooseCategory(wanted: Category): void {
  changeCourse(t('answers.categoryStep'), before => ({ ...before, category: wanted }));
}

/** Editions to choose from: the person's own first, then those that come with the program. */
export const knownEditions = computed<readonly Edition[]>(() => [...rules.value.opened, ...editions]);

export const edition = computed<Edition>(
  () => knownEditions.value.find(each => each.edition === rules.value.edition) ?? editions[0]!,
);

export function chooseEdition(name: string): void {
  if (name !== edition.value.edition) changeRules(t('answers.editionStep'), () => ({ edition: name }));
}

/** Whether the race is of a lower level, for which an edition may ease a length. */
export const lowerLevel = computed(() => rules.value.lowerLevel);

export function chooseLowerLevel(wanted: boolean): void {
  changeRules(t('answers.lowerLevelStep'), () => ({ lowerLevel: wanted }));
}

/** Whether the edition chosen eases anything there. */
export const easesLowerLevel = computed(() =>
  edition.value.limits.some(limit => limit.lowerLevelTolerance !== undefined),
);

export const isOwn = (each: Edition): boolean => rules.value.opened.includes(each);
