import type { CarvingSki } from './groove.ts';
import { defaultTableEdges, defaultTableLoads, type RadiusTableOptions } from './radius-table.ts';
import { REBOUND } from './snow-law.ts';

const STATIONS = 48;
/** Closer than a plate's end is long, so that no plate moves unseen between two stations. */
const CLOSER = 10;

/**
 * A key for keeping a radius table: equal for equal contents, whatever object carries them. The ski's curves
 * enter by their values at evenly spaced stations, the stiffnesses by sums between them too; hardness in N/m³.
 */
export function tableKey(ski: CarvingSki, hardness: number, options: RadiusTableOptions = {}): string {
  const parts: number[] = [hardness, options.fore ?? 0, options.rebound ?? REBOUND, options.elements ?? 120];
  parts.push(ski.camber, ski.bootCentre, ski.soleLength, ski.edge.length, ski.torsion ? 1 : 0);
  const sums = [0, 0, 0, 0];
  for (let i = 0; i <= STATIONS * CLOSER; i++) {
    const x = (ski.edge.length * i) / (STATIONS * CLOSER);
    const bending = ski.bending(x);
    const torsion = ski.torsion?.(x) ?? 0;
    sums[0] += bending;
    sums[1] += bending * x;
    sums[2] += torsion;
    sums[3] += torsion * x;
    if (i % CLOSER !== 0) continue;
    parts.push(ski.edge.halfWidth(x), bending);
    if (ski.torsion) parts.push(torsion);
  }
  parts.push(...sums);
  parts.push(...Array.from(options.edges ?? defaultTableEdges()), Number.NaN);
  parts.push(...Array.from(options.loads ?? defaultTableLoads()));
  return digest(parts.map(part => part.toPrecision(12)).join(' '));
}

/** Two 32-bit FNV-1a sums with different seeds, in hexadecimal. */
function digest(text: string): string {
  let a = 0x811c9dc5;
  let b = 0x9dc5811c;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ code ^ (i & 0xff), 0x01000193);
  }
  const hex = (value: number) => (value >>> 0).toString(16).padStart(8, '0');
  return hex(a) + hex(b);
}
