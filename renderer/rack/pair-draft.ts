import { FieldError, type FieldFault } from '../../core/fault/index.ts';
import { bendingOf, torsionOf } from '../../core/flex/index.ts';
import { checkPair, type Pair, type PairStiffness, skiOf } from '../../core/pair/index.ts';
import { decimal, parseQuantity, type System, shownAs } from '../../core/units/index.ts';
import { inWords, t } from '../state/index.ts';
import { NUMBER_FIELDS, type NumberField } from './pair-fields.ts';

/** What has been typed into the form, by field path. Fields not touched keep the pair's own value. */
export type Draft = Readonly<Record<string, string>>;

/** Field path → message. Paths the form has no line for are gathered under `file`. */
export type Messages = Readonly<Record<string, string>>;

export type DraftResult =
  | { readonly ok: true; readonly pair: Pair }
  | { readonly ok: false; readonly messages: Messages };

/** A field's text before anything is typed. */
export function textOf(pair: Pair, { field, measure, decimals }: NumberField, system: System): string {
  const value = field.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown>)?.[key], pair);
  if (typeof value !== 'number') return '';
  const shown = shownAs(measure, system);
  return trimmed(
    decimal(value * shown.factor, decimals ?? Math.max(shown.decimals, system === 'metric' ? 2 : 3)),
  );
}

const trimmed = (text: string) => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/**
 * The pair with the typed texts put in, or a message for each field that cannot be: the field, what was
 * found, what is accepted.
 */
export function applyDraft(pair: Pair, draft: Draft, system: System): DraftResult {
  const messages: Record<string, string> = {};
  const next: Record<string, unknown> = structuredClone(pair);
  for (const { field, label, measure, otherwise } of NUMBER_FIELDS) {
    const text = draft[field];
    if (text === undefined) continue;
    if (text.trim() === '' && otherwise !== undefined) {
      put(next, field, undefined);
      continue;
    }
    const parsed = parseQuantity(text, measure, system);
    if (parsed.ok) put(next, field, Number(parsed.value.toFixed(6)));
    else messages[field] = inWords({ field: t(label), ...parsed });
  }
  for (const field of ['name', 'notes', 'discipline']) {
    if (draft[field] !== undefined) put(next, field, draft[field] === '' ? undefined : draft[field]);
  }
  if (draft.name !== undefined) next.name = draft.name;
  if (draft.widthStations !== undefined) {
    const read = readStations(draft.widthStations, 'widthMm');
    if (typeof read === 'string')
      messages.widthStations = t('rack.inField', { field: t('rack.widthStationsField'), fault: read });
    else put(next, 'widthStations', read.length > 0 ? read : undefined);
  }
  for (const field of ['bending', 'torsion'] as const) {
    const read = readStiffness(field, draft, pair[field]);
    if (read === 'untouched') continue;
    if (typeof read === 'string') messages[field] = read;
    else put(next, field, read);
  }
  // Where a text cannot be read the last good value stands, so the other fields are told at the same time.
  const problems = checkPair(next);
  for (const problem of problems) {
    const line = lineOf(problem.field);
    messages[line] ??= withTyped(problem, draft[line]);
  }
  if (problems.length === 0) {
    for (const [field, fault] of Object.entries(stiffnessFaults(next as Pair, draft)))
      messages[field] ??= fault;
  }
  return Object.keys(messages).length > 0 ? { ok: false, messages } : { ok: true, pair: next as Pair };
}

/** A problem by the form's own labels, with what was typed where the file would hold it in another unit. */
function withTyped(problem: FieldFault, typed: string | undefined): string {
  const labelled = inWords(problem);
  const { found } = problem;
  const text = typed?.trim() ?? '';
  const same = text === '' || text.includes('\n') || Number(text.replace(',', '.')) === Number(found);
  return same || Number.isNaN(Number(found)) ? labelled : t('rack.typed', { fault: labelled, text });
}

/** What is wrong with a stiffness typed here that only shows when it is worked out, such as a formula. */
function stiffnessFaults(pair: Pair, draft: Draft): Record<string, string> {
  const faults: Record<string, string> = {};
  for (const [field, ask] of [
    ['bending', bendingOf],
    ['torsion', torsionOf],
  ] as const) {
    if (draft[`${field}.kind`] === undefined && draft[`${field}.text`] === undefined) continue;
    try {
      ask(skiOf(pair));
    } catch (cause) {
      if (!(cause instanceof FieldError)) throw cause;
      faults[field] = inWords(cause);
    }
  }
  return faults;
}

/** The form's line a field path belongs to. */
function lineOf(field: string): string {
  if (NUMBER_FIELDS.some(each => each.field === field)) return field;
  const head = field.match(/^(name|notes|discipline|widthStations|bending|torsion)\b/);
  return head ? head[1]! : 'file';
}

function put(target: Record<string, unknown>, field: string, value: unknown): void {
  const [head, inner] = field.split('.') as [string, string?];
  if (inner === undefined) {
    if (value === undefined) delete target[head];
    else target[head] = value;
    return;
  }
  const group = { ...(target[head] as Record<string, unknown> | undefined) };
  if (value === undefined) delete group[inner];
  else group[inner] = value;
  if (Object.keys(group).length > 0) target[head] = group;
  else delete target[head];
}

/** The numbers of a line, apart by space, semicolon, colon or comma; a comma between digits is decimal beside another gap. */
function numbersOf(line: string): number[] {
  const apart = line.split(/\s*[;:]\s*|,\s+|\s+/);
  return (apart.length > 1 ? apart : line.split(',')).map(each => Number(each.replace(',', '.')));
}

/** One station a line, "fromTail value"; a string says which line cannot be read. */
function readStations<K extends string>(
  text: string,
  key: K,
): ({ fromTailMm: number } & Record<K, number>)[] | string {
  const stations: ({ fromTailMm: number } & Record<K, number>)[] = [];
  const lines = text.split('\n');
  for (const [at, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const numbers = numbersOf(line.trim());
    if (numbers.length !== 2 || !numbers.every(Number.isFinite)) {
      return t('rack.stationUnreadable', { line: at + 1, text: line.trim() });
    }
    stations.push({ fromTailMm: numbers[0]!, [key]: numbers[1]! } as { fromTailMm: number } & Record<
      K,
      number
    >);
  }
  return stations;
}

export const stationsText = (
  stations: readonly { fromTailMm: number; [key: string]: unknown }[],
  key: string,
) => stations.map(each => `${each.fromTailMm}  ${each[key]}`).join('\n');

export type StiffnessKind = 'none' | PairStiffness['kind'];

/** The text that stands for a stiffness of some kind in the form. */
export function stiffnessText(stiffness: PairStiffness | undefined): string {
  switch (stiffness?.kind) {
    case 'uniform':
      return String(stiffness.newtonM2);
    case 'formula':
      return stiffness.newtonM2;
    case 'stations':
      return stationsText(stiffness.stations, 'newtonM2');
    default:
      return '';
  }
}

function readStiffness(
  field: 'bending' | 'torsion',
  draft: Draft,
  known: PairStiffness | undefined,
): PairStiffness | undefined | string {
  const kind = (draft[`${field}.kind`] ?? known?.kind ?? 'none') as StiffnessKind;
  const typed = draft[`${field}.text`];
  if (draft[`${field}.kind`] === undefined && typed === undefined) return 'untouched';
  const label = t(`field.${field}`);
  const text = typed ?? (known?.kind === kind ? stiffnessText(known) : '');
  switch (kind) {
    case 'none':
      return undefined;
    case 'layup':
      return known?.kind === 'layup' ? known : t('rack.layupInFlex', { field: label });
    case 'formula':
      return { kind, newtonM2: text };
    case 'stations': {
      const read = readStations(text, 'newtonM2');
      return typeof read === 'string'
        ? t('rack.inField', { field: label, fault: read })
        : { kind, stations: read };
    }
    case 'uniform': {
      const parsed = parseQuantity(text, 'stiffness');
      return parsed.ok ? { kind, newtonM2: parsed.value } : inWords({ field: label, ...parsed });
    }
  }
}
