import type { Ski } from '../../../core/pair/index.ts';

/** An invented ski for tests, SI. */
export function invented(change: Partial<Ski> = {}): Ski {
  return {
    name: 'Larch 155',
    discipline: 'SL',
    length: 1.55,
    contactLength: 1.36,
    tipWidth: 0.117,
    waistWidth: 0.066,
    tailWidth: 0.104,
    waistStation: 0.64,
    widthStations: null,
    camber: 0.008,
    bootCentre: 0.64,
    soleLength: 0.3,
    mass: 1.9,
    bending: {
      kind: 'stations',
      stations: [
        { x: 0, newtonM2: 60 },
        { x: 0.68, newtonM2: 320 },
        { x: 1.36, newtonM2: 50 },
      ],
    },
    torsion: { kind: 'formula', newtonM2: '20 + 120*(1-abs(2*s-1)^1.6)' },
    baseBevel: 0,
    sideAngle: Math.PI / 2,
    standingHeight: 0.05,
    bootSoleHeight: 0.043,
    heightsStated: true,
    ...change,
  };
}
