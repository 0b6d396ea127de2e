export type { Banded } from './banded.ts';
export { addBanded, banded, factorBanded, multiplyBanded, solveBanded } from './banded.ts';
export type { GaussRule } from './gauss-legendre.ts';
export { gaussLegendre, quadrature } from './gauss-legendre.ts';
export { monotoneCubic } from './monotone-cubic.ts';
export { brent } from './root.ts';
export { type Derivative, DormandPrince, type StepControl, solveOde } from './runge-kutta.ts';
export { type CubicSpline, smoothingSpline } from './smoothing-spline.ts';
export type { SymmetricBand } from './symmetric-band.ts';
export {
  addSymmetric,
  factorSymmetric,
  multiplySymmetric,
  prescribe,
  solveSymmetric,
  symmetricBand,
} from './symmetric-band.ts';
