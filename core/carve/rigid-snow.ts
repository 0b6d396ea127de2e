import { FieldError } from '../fault/index.ts';
import type { EdgeCurve } from '../shape/index.ts';

/**
 * The ski fully pressed onto snow it cannot dent: the edge lies in the snow plane from end to end. Then the
 * track curvature is the sidecut's divided by cosθ, R = R_sc·cosθ (Howe, Skiing Mechanics; Lind & Sanders,
 * The Physics of Skiing; both from memory. Jentschura & Fahrbach, Can. J. Phys. 82 (2004) 249–261, abstract).
 */
export interface RigidSki {
  /** R_sc, m. */
  readonly sidecutRadius: number;
  /** d, m. */
  readonly sidecutDepth: number;
  /** Free camber height, m. */
  readonly camber: number;
  /** Base bevel b, rad. */
  readonly baseBevel: number;
  /** Side-edge angle s, rad. */
  readonly sideAngle: number;
}

/** The cosine rule's answer at one edge angle, SI. */
export interface RigidCarve {
  readonly edgeAngle: number;
  readonly turnRadius: number;
  /** How far the middle of the ski moves from its free shape to full contact, m. */
  readonly travel: number;
  /** Angle at which the base-edge face meets the snow, rad; zero or less does not bite. */
  readonly biteAngle: number;
  readonly bites: boolean;
  /** Angle between the base-edge face and the side face, rad. */
  readonly cornerAngle: number;
}

/** Turn radius of the fully pressed ski, m, from the sidecut radius (m) and edge angle (rad). */
export function cosineRadius(sidecutRadius: number, edgeAngle: number): number {
  return sidecutRadius * Math.cos(edgeAngle);
}

/** Travel of the mid-ski from its free shape until the whole edge touches, m: d·tanθ + camber. */
export function midSkiTravel(sidecutDepth: number, edgeAngle: number, camber: number): number {
  return sidecutDepth * Math.tan(edgeAngle) + camber;
}

/**
 * Base height w (m) that full contact needs at x (m), measured from the straight line through the two ends:
 * −(y_end − y)·tanθ, with y_end the half width on the line joining the ends when tip and tail differ.
 */
export function pressedHeight(edge: EdgeCurve, edgeAngle: number, x: number): number {
  const rear = edge.halfWidth(0);
  const front = edge.halfWidth(edge.length);
  const chord = rear + ((front - rear) * x) / edge.length;
  return -(chord - edge.halfWidth(x)) * Math.tan(edgeAngle);
}

/** Height of an edge point over the snow plane, m, up to a constant: w·cosθ − y·sinθ. */
export function edgeHeight(height: number, halfWidth: number, edgeAngle: number): number {
  return height * Math.cos(edgeAngle) - halfWidth * Math.sin(edgeAngle);
}

/** Lateral position of an edge point in the snow plane, m: η = y·cosθ + w·sinθ. */
export function edgeLateral(height: number, halfWidth: number, edgeAngle: number): number {
  return halfWidth * Math.cos(edgeAngle) + height * Math.sin(edgeAngle);
}

/** Angle (rad) at which the base-edge face meets the snow; the edge bites only where it is positive. */
export function biteAngle(edgeAngle: number, baseBevel: number): number {
  return edgeAngle - baseBevel;
}

/** Angle (rad) of the metal corner between base-edge face and side face: s + b. */
export function cornerAngle(sideAngle: number, baseBevel: number): number {
  return sideAngle + baseBevel;
}

/** Every rigid-snow reading at one edge angle (rad). Throws FieldError outside 0 to under 90 degrees. */
export function carveRigid(ski: RigidSki, edgeAngle: number): RigidCarve {
  if (!(edgeAngle >= 0 && edgeAngle < Math.PI / 2)) {
    throw new FieldError({
      field: 'edgeAngle',
      found: { quantity: 'angle', value: edgeAngle },
      accepted: { from: 0, below: Math.PI / 2, quantity: 'angle' },
    });
  }
  const bite = biteAngle(edgeAngle, ski.baseBevel);
  return {
    edgeAngle,
    turnRadius: cosineRadius(ski.sidecutRadius, edgeAngle),
    travel: midSkiTravel(ski.sidecutDepth, edgeAngle, ski.camber),
    biteAngle: bite,
    bites: bite > 0,
    cornerAngle: cornerAngle(ski.sideAngle, ski.baseBevel),
  };
}
