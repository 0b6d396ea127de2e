import { sizeOf } from './table.ts';

/** SI values of the units that a formula or a table of results is most often told in. */
export const DEGREE = sizeOf('°');
export const MM = sizeOf('mm');
export const KMH = sizeOf('km/h');
export const N_PER_MM3 = sizeOf('N/mm³');
export const KPA = sizeOf('kPa');
export const GPA = sizeOf('GPa');
