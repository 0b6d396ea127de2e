/** A row, or a value of the whole set, that could not be read. */
interface Unread {
  readonly row: number;
  readonly field: string;
  readonly raw: string;
}

const opening = ' not read (';

/**
 * What could not be read, as comments of the set's file (without their `#`), a row once and as it was written:
 * a save over that file loses none of it.
 */
export function unreadComments(unread: readonly Unread[]): string[] {
  const rows = new Map<number, { fields: string[]; raw: string }>();
  for (const { row, field, raw } of unread) {
    const known = rows.get(row);
    if (known) known.fields.push(field);
    else rows.set(row, { fields: [field], raw });
  }
  return [...rows.values()].flatMap(({ fields, raw }) =>
    raw.split(/\r\n|\n|\r/).map(line => `${opening}${fields.join(', ').replace(/[\r\n]+/g, ' ')}): ${line}`),
  );
}

/** Whether a line with its `#` is such a comment, which is never a heading, whatever words it holds. */
export const isUnreadComment = (line: string): boolean => line.startsWith(`#${opening}`);
