export type { EvenAxis } from './bicubic-spline.ts';
export { BicubicSpline, calmValues, followingCoefficients } from './bicubic-spline.ts';
export type {
  ChainAnswer,
  ChainFailure,
  ChainGuess,
  ChainMultipliers,
  ChainOptions,
  ChainProblem,
} from './chain-problem.ts';
export { ChainSolver, solveChain } from './chain-solver.ts';
export { gaussLegendre, quadrature } from './gauss-legendre.ts';
export { monotoneCubic } from './monotone-cubic.ts';
export { brent } from './root.ts';
export { DormandPrince } from './runge-kutta.ts';
export { smoothingSpline } from './smoothing-spline.ts';
export type { SymmetricBand } from './symmetric-band.ts';
export {
  addSymmetric,
  factorSymmetric,
  multiplySymmetric,
  prescribe,
  solveSymmetric,
  symmetricBand,
} from './symmetric-band.ts';
export { Formula, Tape, type Term, type TwoArgumentFunction } from './tape.ts';
