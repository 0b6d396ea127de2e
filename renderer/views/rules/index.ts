/**
 * Checking pairs against competition limits: `RuleCheckPanel` with its choices, `checkOf` for one verdict,
 * `VerdictMark` to show it. Category and edition are chosen once for the whole program.
 */
export { foundText, limitedText, limitText } from './found-text.ts';
export { type CheckedEntry, checkOf, RuleCheckPanel } from './rule-check.tsx';
export { edition } from './rules-state.ts';
export { VerdictMark } from './verdict-mark.tsx';
