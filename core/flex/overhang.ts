import { quadrature } from '../numeric/index.ts';
import type { Ski } from '../pair/index.ts';
import type { Profile } from './profile.ts';

/**
 * Share of the length beyond the contact points that lies in front. A file states only the overall length; a
 * ski carries most of the rest in its shovel (common practice, no source).
 */
const FRONT_SHARE = 0.7;
const PANELS = 60;

/** Length beyond each contact point, m. */
export function overhang({ length, contactLength }: Pick<Ski, 'length' | 'contactLength'>): {
  readonly rear: number;
  readonly front: number;
} {
  const beyond = Math.max(0, length - contactLength);
  return { rear: (1 - FRONT_SHARE) * beyond, front: FRONT_SHARE * beyond };
}

/** What lies beyond a contact point, SI: carried by the end of the beam as a rigid piece. */
export interface EndPiece {
  readonly length: number;
  readonly mass: number;
  /** Full width, for the inertia in twist. */
  readonly width: number;
}

export interface EndPieces {
  readonly rear: EndPiece;
  readonly front: EndPiece;
}

/**
 * The ends beyond the contact points with the mean mass a length of the rest, so that beam and ends together
 * weigh what the file says where it states a mass.
 *
 * @param massPerLength kg/m between the contact points
 */
export function endPieces(ski: Ski, massPerLength: Profile, width: Profile): EndPieces {
  const { rear, front } = overhang(ski);
  const mean = quadrature(massPerLength, 0, ski.contactLength, PANELS) / ski.contactLength;
  return {
    rear: { length: rear, mass: mean * rear, width: width(0) },
    front: { length: front, mass: mean * front, width: width(ski.contactLength) },
  };
}
