import { input, type Working } from '../working/index.ts';
import { holdAt } from './hold.ts';
import type { RigidSki } from './rigid-snow.ts';
import { biteAngle, cornerAngle, cosineRadius, midSkiTravel } from './rigid-snow.ts';
import { wedgeDepth } from './wedge-snow.ts';

const COSINE_SOURCE = { key: 'source.cosineRule' } as const;
const SNOW_SOURCE = { key: 'source.wedge' } as const;

/** How the cosine rule's radius came about. */
export function cosineRadiusWorking(ski: RigidSki, edgeAngle: number): Working {
  return {
    key: 'carve.cosineRadius',
    title: { key: 'carve.title.cosineRadius' },
    symbol: 'R',
    formula: 'R_sc * cos(theta)',
    inputs: [
      input('R_sc', 'R_{sc}', 'working.sidecutRadius', ski.sidecutRadius, 'm', 'shape.radius'),
      input('theta', '\\theta', 'working.edgeAngle', edgeAngle, 'rad'),
    ],
    result: { value: cosineRadius(ski.sidecutRadius, edgeAngle), unit: 'm' },
    note: { key: 'carve.note.rigid' },
    source: COSINE_SOURCE,
    status: 'from memory',
  };
}

/** How far the middle of the ski must travel to bring the whole edge down. */
export function travelWorking(ski: RigidSki, edgeAngle: number): Working {
  return {
    key: 'carve.travel',
    title: { key: 'carve.title.travel' },
    symbol: 't',
    formula: 'd * tan(theta) + h',
    inputs: [
      input('d', 'd', 'working.sidecutDepth', ski.sidecutDepth, 'm', 'shape.depth'),
      input('theta', '\\theta', 'working.edgeAngle', edgeAngle, 'rad'),
      input('h', 'h', 'working.freeCamber', ski.camber, 'm', 'camberMm'),
    ],
    result: { value: midSkiTravel(ski.sidecutDepth, edgeAngle, ski.camber), unit: 'm' },
    source: { key: 'source.tiltedEdge' },
    status: 'derived',
  };
}

/** The angle at which the base-edge face meets the snow. */
export function biteAngleWorking(ski: RigidSki, edgeAngle: number): Working {
  const value = biteAngle(edgeAngle, ski.baseBevel);
  return {
    key: 'carve.biteAngle',
    title: { key: 'carve.title.biteAngle' },
    symbol: '\\theta_b',
    formula: 'theta - b',
    inputs: [
      input('theta', '\\theta', 'working.edgeAngle', edgeAngle, 'rad'),
      input('b', 'b', 'working.baseBevel', ski.baseBevel, 'rad', 'edges.baseBevelDeg'),
    ],
    result: { value, unit: 'rad' },
    note: value > 0 ? { key: 'carve.note.bites' } : { key: 'carve.note.noBite' },
    source: { key: 'source.bevel' },
    status: 'derived',
  };
}

/** The angle of the steel corner. */
export function cornerAngleWorking(ski: RigidSki): Working {
  return {
    key: 'carve.cornerAngle',
    title: { key: 'carve.title.cornerAngle' },
    symbol: 'c',
    formula: 's + b',
    inputs: [
      input('s', 's', 'working.sideAngle', ski.sideAngle, 'rad', 'edges.sideAngleDeg'),
      input('b', 'b', 'working.baseBevel', ski.baseBevel, 'rad', 'edges.baseBevelDeg'),
    ],
    result: { value: cornerAngle(ski.sideAngle, ski.baseBevel), unit: 'rad' },
    source: { key: 'source.bevel' },
    status: 'derived',
  };
}

/** The load a thin wedge of the ski carries a metre at a given depth (m), angle (rad) and hardness (N/m³). */
export function lineLoadWorking(depth: number, edgeAngle: number, hardness: number): Working {
  return {
    key: 'carve.lineLoad',
    title: { key: 'carve.title.lineLoad' },
    symbol: 'f',
    formula: 'H_V * e^2 / (2 * tan(theta))',
    inputs: [
      input('H_V', 'H_V', 'working.hardness', hardness, 'N/m^3'),
      input('e', 'e', 'carve.penetration', depth, 'm'),
      input('theta', '\\theta', 'working.localEdgeAngle', edgeAngle, 'rad'),
    ],
    result: { value: (hardness * depth * depth) / (2 * Math.tan(edgeAngle)), unit: 'N/m' },
    note: { key: 'carve.note.wedge' },
    source: SNOW_SOURCE,
    status: 'derived',
  };
}

/** The depth at which a thin wedge carries a given line load (N/m). */
export function wedgeDepthWorking(lineLoad: number, edgeAngle: number, hardness: number): Working {
  return {
    key: 'carve.wedgeDepth',
    title: { key: 'carve.title.wedgeDepth' },
    symbol: 'e',
    formula: 'sqrt(2 * f * tan(theta) / H_V)',
    inputs: [
      input('f', 'f', 'carve.lineLoad', lineLoad, 'N/m'),
      input('theta', '\\theta', 'working.localEdgeAngle', edgeAngle, 'rad'),
      input('H_V', 'H_V', 'working.hardness', hardness, 'N/m^3'),
    ],
    result: { value: wedgeDepth(lineLoad, edgeAngle, hardness), unit: 'm' },
    source: SNOW_SOURCE,
    status: 'derived',
  };
}

/** Hold of one point of the edge; all angles in radians. */
export function holdWorking(edgeAngle: number, twist: number, baseBevel: number, lean: number): Working {
  return {
    key: 'carve.hold',
    title: { key: 'carve.title.hold' },
    symbol: 'h',
    formula: 'theta - phi - b - psi',
    inputs: [
      input('theta', '\\theta', 'working.edgeAngleUnderBoot', edgeAngle, 'rad'),
      input('phi', '\\varphi', 'working.twistThere', twist, 'rad', 'carve.turnRadius'),
      input('b', 'b', 'working.baseBevel', baseBevel, 'rad', 'edges.baseBevelDeg'),
      input('psi', '\\psi', 'carve.resultantLean', lean, 'rad'),
    ],
    result: { value: holdAt(edgeAngle - twist, baseBevel, lean), unit: 'rad' },
    note: { key: 'carve.note.hold' },
    source: { key: 'source.tiltedShelf' },
    status: 'derived',
  };
}

export { penetrationWorking, twistWorking } from './groove-working.ts';
export { partRadiusWorking, turnRadiusWorking } from './track-working.ts';
