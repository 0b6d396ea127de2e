import type { RecentFile } from '../../main/host/index.ts';

const RECENT_KEY = 'turnwright.recent';
const RECENT_COUNT = 8;
/** A copy longer than this is not kept: local storage holds about five megabytes, the draft among them. */
const RECENT_TEXT = 300_000;

/** A file as last opened or saved here. A page may not look where files lie, so it keeps what they held. */
export interface RecentCopy extends RecentFile {
  readonly text: string;
}

/** Puts a file at the head of the list. With no room for it the oldest go, and at worst the file itself. */
export function keepCopy(token: string, name: string, text: string): void {
  const others = readCopies().filter(copy => copy.token !== token && copy.name !== name);
  const copies = text.length <= RECENT_TEXT ? [{ token, name, folder: '', text }, ...others] : others;
  for (let count = Math.min(copies.length, RECENT_COUNT); count >= 0; count--) {
    try {
      localStorage.setItem(RECENT_KEY, JSON.stringify(copies.slice(0, count)));
      return;
    } catch {
      // Full: try with one less.
    }
  }
}

export function readCopies(): RecentCopy[] {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(RECENT_KEY) ?? '[]');
    return Array.isArray(stored) ? stored.filter(isCopy) : [];
  } catch {
    return [];
  }
}

function isCopy(value: unknown): value is RecentCopy {
  const copy = value as Partial<RecentCopy> | null;
  return typeof copy?.token === 'string' && typeof copy.name === 'string' && typeof copy.text === 'string';
}
