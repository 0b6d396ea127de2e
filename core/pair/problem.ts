/** What is wrong with one field of a file: enough to mend it without looking anything up. */
export interface Problem {
  /** Path of the field, for example `bending.stations[2].newtonM2`; `file` for the file as a whole. */
  readonly field: string;
  /** The value found, shortened for reading; `nothing` when the field is absent. */
  readonly found: string;
  /** What would be accepted, in words. */
  readonly accepted: string;
  /** One sentence with all three. */
  readonly message: string;
}

const LONGEST_SHOWN = 60;

/** A problem told in the plain form `field: found is not accepted; accepted is …`, or with its own sentence. */
export function problem(field: string, value: unknown, accepted: string, sentence?: string): Problem {
  const found = shown(value);
  const complaint = value === undefined ? 'is missing' : `${found} is not accepted`;
  return {
    field,
    found,
    accepted,
    message: `${field}: ${sentence ?? `${complaint}; accepted is ${accepted}`}`,
  };
}

/** A value as a person would recognise it from the file, never longer than a line. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = typeof value === 'bigint' ? String(value) : (JSON.stringify(value) ?? typeof value);
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN - 1)}…` : text;
}

/** `['bending', 'stations', 2, 'newtonM2']` → `bending.stations[2].newtonM2`. */
export function fieldPath(path: readonly PropertyKey[]): string {
  let field = '';
  for (const key of path) {
    if (typeof key === 'number') field += `[${key}]`;
    else field += field === '' ? String(key) : `.${String(key)}`;
  }
  return field === '' ? 'file' : field;
}
