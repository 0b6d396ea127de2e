import { quadrature } from '../numeric/index.ts';
import type { Ski } from '../pair/index.ts';
import { layupSections } from './layup.ts';
import { localWidth } from './local-width.ts';
import type { Profile } from './profile.ts';

const PANELS = 60;

/**
 * Mass along the ski, kg/m: from the layup where bending is given as one, else the ski's mass spread over its
 * overall length in proportion to the local width. The beam ends at the contact points; what lies beyond them
 * is `endPieces`. Null when the file gives neither.
 */
export function massPerLength(ski: Ski, width: Profile = localWidth(ski)): Profile | null {
  const { bending, contactLength, length, mass } = ski;
  if (bending?.kind === 'layup') {
    const section = layupSections(bending.layup, width);
    return x => section(x).massPerLength;
  }
  if (mass === null) return null;
  const mean = quadrature(width, 0, contactLength, PANELS) / contactLength;
  return x => ((mass / length) * width(x)) / mean;
}
