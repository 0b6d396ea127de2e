export { checkWorking, WORKING_TOLERANCE } from './check.ts';
export { evaluate } from './evaluate.ts';
export { substituted, texNumber, texValue } from './substituted.ts';
export type { SourceStatus, Working, WorkingInput, WorkingValue } from './working.ts';
