export type { EdgeCurve } from './edge-curve.ts';
