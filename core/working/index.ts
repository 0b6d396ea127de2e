export { checkWorking } from './check.ts';
export { evaluate } from './evaluate.ts';
export type { SourceStatus, Working, WorkingInput, WorkingValue } from './working.ts';
