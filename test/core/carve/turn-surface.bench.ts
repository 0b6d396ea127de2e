import { bench, describe } from 'vitest';
import {
  buildRadiusTable,
  cosineTurnSurface,
  tableRadius,
  tableTurnSurface,
} from '../../../core/carve/index.ts';
import { hardness, radians, slalomSki } from './demo.ts';

const CALLS = 1000;

/** One call is a thousandth of the time told. */
describe('curvature with its five derivatives, a thousand calls along a turn', () => {
  const table = buildRadiusTable(slalomSki, hardness(1));
  if (table === null || 'ok' in table) throw new Error('no table');
  const out = new Float64Array(6);
  const angles = Float64Array.from({ length: CALLS }, (_, i) => radians(65 * Math.sin((3 * i) / CALLS)));
  const loads = Float64Array.from({ length: CALLS }, (_, i) => 700 + 600 * Math.cos((7 * i) / CALLS));
  const surface = tableTurnSurface(table);
  const rule = cosineTurnSurface(12.5);
  bench('solved table', () => {
    for (let i = 0; i < CALLS; i++) surface.curvature(angles[i], loads[i], out);
  });
  bench('cosine rule', () => {
    for (let i = 0; i < CALLS; i++) rule.curvature(angles[i], loads[i], out);
  });
  bench('the table itself, radius only', () => {
    for (let i = 0; i < CALLS; i++) out[0] = tableRadius(table, Math.abs(angles[i]), loads[i]);
  });
  bench('made from its table', () => {
    tableTurnSurface(table);
  });
});
