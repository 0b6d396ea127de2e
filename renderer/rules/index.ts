/** Checking pairs against competition limits: the panel with its choices, and the mark of a verdict. */
export { type CheckedEntry, RuleCheckPanel } from './rule-check.tsx';
export { VerdictMark } from './verdict-mark.tsx';
