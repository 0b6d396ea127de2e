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

/** Fills in the defaults. `RangeError` naming the field, the value found and what is accepted. */
export function fillCourseConditions(given: Partial<CourseConditions>): CourseConditions {
  const full = { ...usualConditions, ...given };
  const accept = (field: keyof CourseConditions, unit: string, low: number, high: number): void => {
    const value = full[field] as number;
    if (!(value >= low && value <= high)) {
      throw new RangeError(`${field}: ${value} ${unit} found; accepted is ${low} to ${high} ${unit}.`);
    }
  };
  accept('slope', 'rad', 0, 1.2);
  accept('mass', 'kg', 10, 500);
  accept('friction', '', 0, 1);
  accept('dragArea', 'm²', 0, 5);
  accept('airDensity', 'kg/m³', 0, 2);
  accept('startSpeed', 'm/s', 0, 80);
  accept('outerShare', '', 0.1, 1);
  accept('greatestEdge', 'rad', 0.1, 1.5);
  return full;
}
