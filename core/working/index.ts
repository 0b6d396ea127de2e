export { balanceSides, type Sides } from './balance.ts';
export { checkWorking } from './check.ts';
export { type InputInWords, type WorkingInWords, workingInWords } from './in-words.ts';
export { input } from './input.ts';
export { ownResult } from './own-result.ts';
export type { Balance, SourceStatus, Working, WorkingInput, WorkingValue } from './working.ts';
export { workingOf } from './working-of.ts';
export { balanceTex, workingTex } from './working-tex.ts';
