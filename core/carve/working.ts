import type { Working } from '../working/index.ts';
import { holdAt } from './hold.ts';
import type { RigidSki } from './rigid-snow.ts';
import { biteAngle, cornerAngle, cosineRadius, midSkiTravel } from './rigid-snow.ts';
import { wedgeDepth } from './wedge-snow.ts';

const COSINE_SOURCE =
  'Howe, Skiing Mechanics; Lind & Sanders, The Physics of Skiing (from memory); Jentschura & Fahrbach, Can. J. Phys. 82 (2004) 249–261 (abstract)';
const SNOW_SOURCE =
  'Mössner et al., J. Glaciol. (2013): penetration force proportional to displaced volume; wedge form derived';

/** How the cosine rule's radius came about. */
export function cosineRadiusWorking(ski: RigidSki, edgeAngle: number): Working {
  return {
    key: 'carve.cosineRadius',
    title: 'Turn radius by the cosine rule',
    symbol: 'R',
    formula: 'R_sc * cos(theta)',
    inputs: [
      {
        name: 'R_sc',
        symbol: 'R_{sc}',
        meaning: 'sidecut radius',
        from: 'shape.radius',
        value: ski.sidecutRadius,
        unit: 'm',
      },
      { name: 'theta', symbol: '\\theta', meaning: 'edge angle', value: edgeAngle, unit: 'rad' },
    ],
    result: { value: cosineRadius(ski.sidecutRadius, edgeAngle), unit: 'm' },
    note: 'Holds for a ski pressed fully onto snow it cannot dent.',
    source: COSINE_SOURCE,
    status: 'from memory',
  };
}

/** How far the middle of the ski must travel to bring the whole edge down. */
export function travelWorking(ski: RigidSki, edgeAngle: number): Working {
  return {
    key: 'carve.travel',
    title: 'Mid-ski travel to full contact',
    symbol: 't',
    formula: 'd * tan(theta) + h',
    inputs: [
      {
        name: 'd',
        symbol: 'd',
        meaning: 'sidecut depth',
        from: 'shape.depth',
        value: ski.sidecutDepth,
        unit: 'm',
      },
      { name: 'theta', symbol: '\\theta', meaning: 'edge angle', value: edgeAngle, unit: 'rad' },
      { name: 'h', symbol: 'h', meaning: 'free camber', from: 'camberMm', value: ski.camber, unit: 'm' },
    ],
    result: { value: midSkiTravel(ski.sidecutDepth, edgeAngle, ski.camber), unit: 'm' },
    source: 'Plane geometry of the edge tilted by θ',
    status: 'derived',
  };
}

/** The angle at which the base-edge face meets the snow. */
export function biteAngleWorking(ski: RigidSki, edgeAngle: number): Working {
  const value = biteAngle(edgeAngle, ski.baseBevel);
  return {
    key: 'carve.biteAngle',
    title: 'Bite angle',
    symbol: '\\theta_b',
    formula: 'theta - b',
    inputs: [
      { name: 'theta', symbol: '\\theta', meaning: 'edge angle', value: edgeAngle, unit: 'rad' },
      {
        name: 'b',
        symbol: 'b',
        meaning: 'base bevel',
        from: 'edges.baseBevelDeg',
        value: ski.baseBevel,
        unit: 'rad',
      },
    ],
    result: { value, unit: 'rad' },
    note: value > 0 ? 'The edge bites.' : 'No bite: the edge angle is not above the base bevel.',
    source: 'Geometry of the bevelled edge',
    status: 'derived',
  };
}

/** The angle of the steel corner. */
export function cornerAngleWorking(ski: RigidSki): Working {
  return {
    key: 'carve.cornerAngle',
    title: 'Edge corner angle',
    symbol: 'c',
    formula: 's + b',
    inputs: [
      {
        name: 's',
        symbol: 's',
        meaning: 'side-edge angle',
        from: 'edges.sideAngleDeg',
        value: ski.sideAngle,
        unit: 'rad',
      },
      {
        name: 'b',
        symbol: 'b',
        meaning: 'base bevel',
        from: 'edges.baseBevelDeg',
        value: ski.baseBevel,
        unit: 'rad',
      },
    ],
    result: { value: cornerAngle(ski.sideAngle, ski.baseBevel), unit: 'rad' },
    source: 'Geometry of the bevelled edge',
    status: 'derived',
  };
}

/** The load a thin wedge of the ski carries a metre at a given depth (m), angle (rad) and hardness (N/m³). */
export function lineLoadWorking(depth: number, edgeAngle: number, hardness: number): Working {
  return {
    key: 'carve.lineLoad',
    title: 'Snow load along the edge',
    symbol: 'f',
    formula: 'H_V * e^2 / (2 * tan(theta))',
    inputs: [
      { name: 'H_V', symbol: 'H_V', meaning: 'snow hardness', value: hardness, unit: 'N/m^3' },
      { name: 'e', symbol: 'e', meaning: 'penetration', value: depth, unit: 'm' },
      { name: 'theta', symbol: '\\theta', meaning: 'local edge angle', value: edgeAngle, unit: 'rad' },
    ],
    result: { value: (hardness * depth * depth) / (2 * Math.tan(edgeAngle)), unit: 'N/m' },
    note: 'While only part of the width is in the snow, and where no point ahead has gone deeper.',
    source: SNOW_SOURCE,
    status: 'derived',
  };
}

/** The depth at which a thin wedge carries a given line load (N/m). */
export function wedgeDepthWorking(lineLoad: number, edgeAngle: number, hardness: number): Working {
  return {
    key: 'carve.wedgeDepth',
    title: 'Depth of the edge in the snow',
    symbol: 'e',
    formula: 'sqrt(2 * f * tan(theta) / H_V)',
    inputs: [
      { name: 'f', symbol: 'f', meaning: 'line load', value: lineLoad, unit: 'N/m' },
      { name: 'theta', symbol: '\\theta', meaning: 'local edge angle', value: edgeAngle, unit: 'rad' },
      { name: 'H_V', symbol: 'H_V', meaning: 'snow hardness', value: hardness, unit: 'N/m^3' },
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
    title: 'Hold',
    symbol: '\\text{hold}',
    formula: 'theta - phi - b - psi',
    inputs: [
      {
        name: 'theta',
        symbol: '\\theta',
        meaning: 'edge angle under the boot',
        value: edgeAngle,
        unit: 'rad',
      },
      {
        name: 'phi',
        symbol: '\\varphi',
        meaning: 'twist of the ski there',
        from: 'carve.turnRadius',
        value: twist,
        unit: 'rad',
      },
      {
        name: 'b',
        symbol: 'b',
        meaning: 'base bevel',
        from: 'edges.baseBevelDeg',
        value: baseBevel,
        unit: 'rad',
      },
      { name: 'psi', symbol: '\\psi', meaning: 'lean of the resultant', value: lean, unit: 'rad' },
    ],
    result: { value: holdAt(edgeAngle - twist, baseBevel, lean), unit: 'rad' },
    note: 'Negative slips: the resultant leans more than the shelf is steep.',
    source:
      'Equilibrium of a point on a tilted shelf; compare Brown, ASTM STP 1022 (1989), critical edge angle',
    status: 'derived',
  };
}

export { penetrationWorking, twistWorking } from './groove-working.ts';
export { partRadiusWorking, turnRadiusWorking } from './track-working.ts';
