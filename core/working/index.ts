export type { SourceStatus, Working, WorkingInput, WorkingValue } from './working.ts';
