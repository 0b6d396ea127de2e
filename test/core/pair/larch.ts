/** Invented: what no pair file can do without. */
export const least = {
  format: 'turnwright.pair',
  version: 1,
  name: 'Larch 155',
  lengthMm: 1550,
  contactLengthMm: 1360,
  tipWidthMm: 117,
  waistWidthMm: 66,
  tailWidthMm: 104,
} as const;

/** The same with most of what a file may state. */
export const larch = {
  ...least,
  discipline: 'SL',
  waistFromTailMm: 640,
  camberMm: 8,
  bootCentreFromTailMm: 640,
  massKg: 1.9,
  bending: {
    kind: 'stations',
    stations: [
      { fromTailMm: 0, newtonM2: 40 },
      { fromTailMm: 680, newtonM2: 260 },
    ],
  },
  torsion: { kind: 'formula', newtonM2: '20 + 120*(1-abs(2*s-1)^1.6)' },
  edges: { baseBevelDeg: 0.5, sideAngleDeg: 87 },
  demo: true,
  notes: '',
} as const;
