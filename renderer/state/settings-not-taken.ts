import { rowOf } from '../../core/conditions/index.ts';
import type { PlainKey, Sentence } from '../../core/language/index.ts';
import { conditionsGiven } from './condition-settings.ts';
import type { ConditionField, Project } from './project.ts';

type Given = Readonly<Record<string, unknown>>;

/** Settings beside the conditions, by their part of the project, with the key of their name. */
const SETTINGS = {
  slope: {
    ground: 'setting.ground',
    groundFile: 'setting.groundFile',
    programme: 'setting.programme',
    programmeFile: 'setting.programmeFile',
    shape: 'setting.shape',
    drawn: 'setting.drawn',
  },
  course: {
    discipline: 'setting.discipline',
    slopeDeg: 'setting.courseSlope',
    speedKmh: 'setting.courseSpeed',
    keepSpeed: 'setting.keepSpeed',
    onProfile: 'setting.onProfile',
    greatestEdgeDeg: 'setting.courseEdgeMost',
    gateWidthM: 'condition.gateWidth',
    category: 'setting.category',
  },
  rules: { edition: 'setting.edition', lowerLevel: 'setting.lowerLevel' },
  board: { sideBySide: 'setting.sideBySide' },
  dueAfter: { edgeDays: 'setting.edgeDays', waxDays: 'setting.waxDays' },
  view: {
    question: 'setting.question',
    system: 'setting.system',
    theme: 'setting.theme',
    exaggeration: 'setting.exaggeration',
  },
} as const satisfies Partial<Record<keyof Project, Readonly<Record<string, PlainKey>>>>;

/** Longest value that is told word for word. */
const TOLD = 40;

/**
 * Settings a draft states that its project did not take up because they fail their check: the name of each and what
 * was found. Empty for a draft that is none.
 */
export function settingsNotTaken(draft: string | null, project: Project): Sentence[] {
  const given = parsed(draft);
  if (given === null) return [];
  const conditions = conditionsGiven(given);
  const others = Object.entries(SETTINGS).flatMap(([part, names]) => {
    const stated = given[part];
    if (typeof stated !== 'object' || stated === null) return [];
    const kept = project[part as keyof Project] as unknown as Given;
    return Object.entries(names).flatMap(([setting, name]) =>
      notTaken((stated as Given)[setting], kept[setting], name),
    );
  });
  return [
    ...Object.entries({ wallStrengthKPa: undefined, ...project.conditions }).flatMap(([field, kept]) =>
      notTaken(conditions[field], kept, rowOf(field as ConditionField).label),
    ),
    ...others,
  ];
}

function notTaken(stated: unknown, kept: unknown, name: PlainKey): Sentence[] {
  const text = JSON.stringify(stated);
  if (text === undefined || text === JSON.stringify(kept)) return [];
  if (text.length > TOLD) return [{ key: name }];
  return [{ key: 'setting.notTaken', values: { name: { key: name }, found: text } }];
}

function parsed(draft: string | null): Given | null {
  try {
    const value: unknown = JSON.parse(draft ?? 'null');
    return typeof value === 'object' && value !== null ? (value as Given) : null;
  } catch {
    return null;
  }
}
