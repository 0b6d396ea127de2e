import { DEGREE, GPA, MM } from '../units/index.ts';
import { DEFAULTS } from './defaults.ts';
import { LEAST_WIDTH_STATIONS, type Pair } from './pair-schema.ts';
import type { Layup, LayupLayer, Plate, SideStrip, Ski, Stiffness } from './ski.ts';
import type { PairStiffness } from './stiffness-schema.ts';

const G_PER_CM3 = 1e3;

/** One ski of a pair in SI units with every default filled in. Takes a pair that has been checked. */
export function skiOf(pair: Pair): Ski {
  const contactLength = pair.contactLengthMm * MM;
  const stations = pair.widthStations ?? [];
  const used = stations.length >= LEAST_WIDTH_STATIONS;
  return {
    name: pair.name,
    discipline: pair.discipline ?? 'other',
    length: pair.lengthMm * MM,
    contactLength,
    tipWidth: pair.tipWidthMm * MM,
    waistWidth: pair.waistWidthMm * MM,
    tailWidth: pair.tailWidthMm * MM,
    waistStation: pair.waistFromTailMm === undefined ? null : pair.waistFromTailMm * MM,
    widthStations: used
      ? stations.map(({ fromTailMm, widthMm }) => ({ x: fromTailMm * MM, width: widthMm * MM }))
      : null,
    ...(used || stations.length === 0 ? {} : { unusedWidthStations: stations.length }),
    camber: (pair.camberMm ?? DEFAULTS.camberMm) * MM,
    bootCentre:
      pair.bootCentreFromTailMm === undefined
        ? DEFAULTS.bootCentreShare * contactLength
        : pair.bootCentreFromTailMm * MM,
    soleLength: (pair.bootSoleMm ?? DEFAULTS.bootSoleMm) * MM,
    mass: pair.massKg ?? null,
    bending: pair.bending === undefined ? null : stiffnessOf(pair.bending),
    torsion: pair.torsion === undefined ? null : stiffnessOf(pair.torsion),
    ...(pair.plate && { plate: plateOf(pair.plate) }),
    ...(pair.bootSoleNewtonM2 && { soleBending: pair.bootSoleNewtonM2 }),
    standingHeight: (pair.standingHeightMm ?? DEFAULTS.standingHeightMm) * MM,
    heightsStated: pair.standingHeightMm !== undefined && pair.bootSoleHeightMm !== undefined,
    bootSoleHeight: (pair.bootSoleHeightMm ?? DEFAULTS.bootSoleHeightMm) * MM,
    baseBevel: (pair.edges?.baseBevelDeg ?? DEFAULTS.baseBevelDeg) * DEGREE,
    sideAngle: (pair.edges?.sideAngleDeg ?? DEFAULTS.sideAngleDeg) * DEGREE,
  };
}

const plateOf = (stated: NonNullable<Pair['plate']>): Plate => ({
  from: stated.fromTailMm * MM,
  to: (stated.fromTailMm + stated.lengthMm) * MM,
  bending: stated.newtonM2,
  torsion: stated.torsionNewtonM2 ?? 0,
});

function stiffnessOf(stated: PairStiffness): Stiffness {
  switch (stated.kind) {
    case 'uniform':
      return { kind: 'uniform', newtonM2: stated.newtonM2 };
    case 'stations':
      return {
        kind: 'stations',
        stations: stated.stations.map(({ fromTailMm, newtonM2 }) => ({ x: fromTailMm * MM, newtonM2 })),
      };
    case 'formula':
      return { kind: 'formula', newtonM2: stated.newtonM2 };
    case 'layup':
      return { kind: 'layup', layup: layupOf(stated) };
  }
}

type StatedLayup = Extract<PairStiffness, { kind: 'layup' }>;

function layupOf({ layers, edges, sidewalls }: StatedLayup): Layup {
  return {
    layers: layers.map(layerOf),
    ...(edges && { edges: { ...stripOf(edges), height: edges.heightMm * MM } }),
    ...(sidewalls && { sidewalls: stripOf(sidewalls) }),
  };
}

const stripOf = (side: NonNullable<StatedLayup['sidewalls']>): SideStrip => ({
  width: side.widthMm * MM,
  youngs: side.youngsGPa * GPA,
  shear: side.shearGPa * GPA,
  density: side.densityGPerCm3 * G_PER_CM3,
});

function layerOf(layer: StatedLayup['layers'][number]): LayupLayer {
  const { thicknessMm } = layer;
  return {
    material: layer.material,
    youngs: layer.youngsGPa * GPA,
    shear: layer.shearGPa * GPA,
    density: layer.densityGPerCm3 * G_PER_CM3,
    thickness:
      typeof thicknessMm === 'number'
        ? thicknessMm * MM
        : thicknessMm.map(station => ({ x: station.fromTailMm * MM, thickness: station.thicknessMm * MM })),
    widthShare: layer.widthShare ?? 1,
  };
}
