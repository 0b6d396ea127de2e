export { checkWorking } from './check.ts';
export type { SourceStatus, Working, WorkingInput, WorkingValue } from './working.ts';
