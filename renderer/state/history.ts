/**
 * Undo and redo over immutable values. Edits that share a key and follow each other (a drag, a slider, a
 * field being typed in) become one step, until another key or `settle` closes it.
 */
export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly present: T;
  readonly future: readonly Step<T>[];
  /** Key of the step still open for coalescing. */
  readonly open: string | null;
}

export interface Step<T> {
  readonly value: T;
  /** What the edit that leads away from (past) or to (future) this value is called. */
  readonly label: string;
}

export const MAX_STEPS = 200;

export const begin = <T>(present: T): History<T> => ({ past: [], present, future: [], open: null });

/** A new present. With the key of the open step the step before it stays the one undo returns to. */
export function push<T>(history: History<T>, next: T, label: string, key: string | null = null): History<T> {
  if (next === history.present) return history;
  if (key !== null && key === history.open && history.past.length > 0) {
    return { ...history, present: next, future: [] };
  }
  const past = [...history.past, { value: history.present, label }].slice(-MAX_STEPS);
  return { past, present: next, future: [], open: key };
}

/** A new present that undo does not know about. */
export const replace = <T>(history: History<T>, next: T): History<T> => ({ ...history, present: next });

/**
 * Writes into every step, past and to come, something learnt about the world (that a file now holds a pair):
 * undo takes back edits, not what lies on the disk.
 */
export function everywhere<T>(history: History<T>, change: (value: T) => T): History<T> {
  const changed = ({ value, label }: Step<T>): Step<T> => ({ value: change(value), label });
  return {
    ...history,
    past: history.past.map(changed),
    present: change(history.present),
    future: history.future.map(changed),
  };
}

/** Closes the open step: the next edit starts a new one even with the same key. */
export const settle = <T>(history: History<T>): History<T> =>
  history.open === null ? history : { ...history, open: null };

export function undo<T>(history: History<T>): History<T> {
  const step = history.past.at(-1);
  if (!step) return history;
  return {
    past: history.past.slice(0, -1),
    present: step.value,
    future: [{ value: history.present, label: step.label }, ...history.future],
    open: null,
  };
}

export function redo<T>(history: History<T>): History<T> {
  const [step, ...future] = history.future;
  if (!step) return history;
  return {
    past: [...history.past, { value: history.present, label: step.label }],
    present: step.value,
    future,
    open: null,
  };
}
