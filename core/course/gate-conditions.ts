import { type AcceptedRange, accept } from '../fault/index.ts';
import { DRAG_AREA } from '../run/index.ts';

/** Slope, skier, snow and air of a course, SI and rad. */
export interface CourseConditions {
  readonly slope: number;
  /** Skier with equipment, kg. */
  readonly mass: number;
  readonly friction: number;
  /** C_dA, m². */
  readonly dragArea: number;
  /** kg/m³. */
  readonly airDensity: number;
  /** At the first sample of the line, m/s. */
  readonly startSpeed: number;
  /** Keep the start speed all the way, as a coach asks "at 45 km/h?". */
  readonly holdSpeed: boolean;
  /** Part of the load on the outer ski. */
  readonly outerShare: number;
  /** Greatest edge angle the skier reaches, rad. */
  readonly greatestEdge: number;
}

/**
 * Greatest edge angle 65°: the critical angle between holding and skidding is 40–70° (Brown, ASTM STP 1022,
 * seen) and 65.7 ± 1.7° was measured in 10 m slalom gates (Reid et al. 2020, seen). Friction, drag area and
 * share are the program's usual placeholders.
 */
export const usualConditions: CourseConditions = {
  slope: (18 * Math.PI) / 180,
  mass: 75,
  friction: 0.05,
  dragArea: DRAG_AREA['race stance'],
  airDensity: 1.1,
  startSpeed: 9,
  holdSpeed: false,
  outerShare: 0.7,
  greatestEdge: (65 * Math.PI) / 180,
};

const ranges = {
  slope: { from: 0, to: 1.2, quantity: 'angle' },
  mass: { from: 10, to: 500, quantity: 'mass' },
  friction: { from: 0, to: 1 },
  dragArea: { from: 0, to: 5, quantity: 'areaM2' },
  airDensity: { from: 0, to: 2, quantity: 'density' },
  startSpeed: { from: 0, to: 80, quantity: 'speed' },
  outerShare: { from: 0.1, to: 1 },
  greatestEdge: { from: 0.1, to: 1.5, quantity: 'angle' },
} as const satisfies Partial<Record<keyof CourseConditions, AcceptedRange>>;

/**
 * Fills in the defaults.
 *
 * @throws FieldError
 */
export function fillCourseConditions(given: Partial<CourseConditions>): CourseConditions {
  const full = { ...usualConditions, ...given };
  for (const [field, range] of Object.entries(ranges))
    accept(field, full[field as keyof typeof ranges], range);
  return full;
}
