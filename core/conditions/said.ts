import { CONDITIONS, type Condition } from './table.ts';

type Table = typeof CONDITIONS;

/** Name of a condition as it is said: in the unit of its measure. */
export type Field = keyof Table;

/** Rows of the table about one thing. */
export type Group = Table[Field]['group'];

export type FieldOf<G extends Group> = { [F in Field]: Table[F]['group'] extends G ? F : never }[Field];

type Usual = { [F in Field]: Table[F]['usual'] extends null ? never : F }[Field];

/** Conditions in the units people say: every one that has a usual value, and those that were said. */
export type Said = { readonly [F in Usual]: number } & { readonly [F in Exclude<Field, Usual>]?: number };

const FIELDS = Object.keys(CONDITIONS) as readonly Field[];

/** The row of a field. */
export const rowOf = (field: Field): Condition => CONDITIONS[field];

/** Fields of some groups, in the table's order. */
export const fieldsOf = <G extends Group>(...groups: readonly G[]): FieldOf<G>[] =>
  FIELDS.filter(field => (groups as readonly string[]).includes(CONDITIONS[field].group)) as FieldOf<G>[];

/** What is taken where nobody says: the same for the page, the board and the command line. */
export const USUAL = Object.fromEntries(
  FIELDS.flatMap(field => {
    const { usual } = CONDITIONS[field];
    return usual === null ? [] : [[field, usual]];
  }),
) as unknown as Said;

/** Whether a value may be taken for a condition, in the unit it is said in. */
export function isAccepted(field: Field, value: unknown): value is number {
  const { least, most, whole } = rowOf(field);
  return typeof value === 'number' && value >= least && value <= most && (!whole || Number.isInteger(value));
}

/** What the page's controls and the files it reads offer of a condition, in the unit it is said in. */
export function reachOf(field: Field): readonly [least: number, most: number] {
  const { least, most, reach = [least, most] } = rowOf(field);
  return reach;
}
