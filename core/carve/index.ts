export type { CarveConditions, CarveFailure, CarvingSki, Equilibrium } from './groove.ts';
export type { RadiusTable } from './radius-table.ts';
