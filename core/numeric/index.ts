/** General methods, nothing of skis: bands, eigenvalues, roots, splines, quadrature, steps through time, optima. */
export { BicubicSpline, calmValues, type EvenAxis, followingCoefficients } from './bicubic-spline.ts';
export { BorderedBand } from './bordered-band.ts';
export type {
  ChainAnswer,
  ChainCentre,
  ChainFailure,
  ChainGuess,
  ChainMultipliers,
  ChainOptions,
  ChainProblem,
} from './chain-problem.ts';
export { ChainSolver, solveChain } from './chain-solver.ts';
export { lowestModes } from './eigen.ts';
export { gaussLegendre, quadrature } from './gauss-legendre.ts';
export { monotoneCubic } from './monotone-cubic.ts';
export { pieceAt } from './piece.ts';
export { brent, firstWhere } from './root.ts';
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
export { type Formula, Tape, type Term, type TwoArgumentFunction } from './tape.ts';
