export { arcHeight, circleThrough } from './circle.ts';
export { type EdgeCurve, edgeCurve, localRadius } from './edge-curve.ts';
export type { Parabola } from './parabola.ts';
export { type Sidecut, sidecut } from './sidecut.ts';
export { type MeasuringUncertainty, TAPE_AND_CALIPER, threeWidthUncertainty } from './sidecut-uncertainty.ts';
export { widthRemark } from './width-remark.ts';
export { shapeWorkings } from './working.ts';
