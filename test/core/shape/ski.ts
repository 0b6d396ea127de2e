import type { Ski } from '../../../core/pair/index.ts';

/** A slalom ski with everything the shape does not ask about left plain. */
export function skiWith(change: Partial<Ski>): Ski {
  return {
    name: 'test ski',
    discipline: 'SL',
    length: 1.65,
    contactLength: 1.4,
    tipWidth: 0.112,
    waistWidth: 0.066,
    tailWidth: 0.1,
    waistStation: null,
    widthStations: null,
    camber: 0,
    bootCentre: 0.66,
    soleLength: 0.3,
    mass: null,
    bending: null,
    torsion: null,
    baseBevel: 0,
    sideAngle: Math.PI / 2,
    standingHeight: 0.05,
    bootSoleHeight: 0.043,
    heightsStated: true,
    ...change,
  };
}

/** The ski turned end for end. */
export function reversed(ski: Ski): Ski {
  return {
    ...ski,
    tipWidth: ski.tailWidth,
    tailWidth: ski.tipWidth,
    waistStation: ski.waistStation === null ? null : ski.contactLength - ski.waistStation,
    widthStations:
      ski.widthStations
        ?.map(({ x, width }) => ({ x: ski.contactLength - x, width }))
        .sort((a, b) => a.x - b.x) ?? null,
  };
}
