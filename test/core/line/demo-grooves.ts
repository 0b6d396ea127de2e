import { readdirSync, readFileSync } from 'node:fs';
import {
  buildRadiusTable,
  carvingSkiOf,
  cosineTurnSurface,
  type TurnSurface,
  tableTurnSurface,
} from '../../../core/carve/index.ts';
import { readPair, type Ski, skiOf } from '../../../core/pair/index.ts';
import { sidecut } from '../../../core/shape/index.ts';
import { DEGREE } from './questions.ts';

const demo = new URL('../../../renderer/demo/', import.meta.url);

export const demoSkis: readonly Ski[] = readdirSync(demo)
  .filter(name => name.endsWith('.pair.json'))
  .map(name => {
    const read = readPair(readFileSync(new URL(name, demo), 'utf8'));
    if (!read.ok) throw new Error(name);
    return skiOf(read.pair);
  });

/** The pair in its own groove on snow of a hardness (N/m³); by the cosine rule where it states no stiffness. */
export function grooveSurface(ski: Ski, hardness: number): TurnSurface {
  const { contactLength } = ski;
  const carving = carvingSkiOf(ski);
  if (!carving.ok) return cosineTurnSurface(sidecut(ski).radius, { contactLength, hardness });
  const table = buildRadiusTable(carving.ski, hardness, {
    edges: Array.from({ length: 14 }, (_, i) => (4 + 5 * i) * DEGREE),
    loads: Array.from({ length: 7 }, (_, i) => 200 * 20 ** (i / 6)),
  });
  if (table === null || 'ok' in table) throw new Error(`${ski.name}: no table`);
  return tableTurnSurface(table);
}
