export { balanceSides, type Sides } from './balance.ts';
export { checkWorking } from './check.ts';
export { ownResult } from './own-result.ts';
export type { Balance, SourceStatus, Working, WorkingInput, WorkingValue } from './working.ts';
export { balanceTex, workingTex } from './working-tex.ts';
