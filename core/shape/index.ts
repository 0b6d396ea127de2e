export { arcHeight, circleThrough } from './circle.ts';
export { type EdgeCurve, edgeCurve, localRadius, narrowestStation } from './edge-curve.ts';
export { fitParabola, type Parabola, threeWidthParabola } from './parabola.ts';
export { type Sidecut, sidecut, sidecutDepth } from './sidecut.ts';
export { type MeasuringUncertainty, TAPE_AND_CALIPER, threeWidthUncertainty } from './sidecut-uncertainty.ts';
export { widthRemark } from './width-remark.ts';
export { shapeWorkings } from './working.ts';
