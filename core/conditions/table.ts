/**
 * The one table of what is asked that is not a ski: snow, skier, air, hill, turns, gates, bench. Controls of the page,
 * options of the command line, the check of a draft and every conversion into SI are made from its rows.
 *
 * Usual values are a junior's slalom, since a first start is a junior's; status is `own choice` unless a comment names
 * a source.
 */

import type { PlainKey } from '../language/index.ts';
import type { MeasureName } from '../units/index.ts';

export interface Condition {
  /** What it is about: who takes a group takes every row of it. */
  readonly group: string;
  /** Its name in SI (rad), as the rooms that compute are asked it. */
  readonly si: string;
  /** How it is shown and typed; it is held in the measure's own unit, which is the one people say. */
  readonly measure: MeasureName;
  /** Accepted, in that unit. */
  readonly least: number;
  readonly most: number;
  /** What a control of the page reaches, where that is less. */
  readonly reach?: readonly [least: number, most: number];
  /** Taken where nobody says; null where it follows from another condition. */
  readonly usual: number | null;
  /** One step of a control; left out where the control is logarithmic. */
  readonly step?: number;
  /** Decimals on a control, where the measure's own are too many or too few. */
  readonly decimals?: number;
  readonly whole?: true;
  /** Key of its label in core/language. */
  readonly label: PlainKey & `condition.${string}`;
  /** Its option on the command line. */
  readonly option?: string;
}

// biome-ignore format: two lines a row read as a table
export const CONDITIONS = {
  edgeDeg: { group: 'edge', si: 'edgeAngle', measure: 'angleDeg', least: 0.5, most: 85, reach: [2, 75], usual: 50,
    step: 1, label: 'condition.edge', option: 'edge' },
  /** Normal to the ski's base. */
  loadN: { group: 'edge', si: 'load', measure: 'force', least: 1, most: 20_000, reach: [200, 4000], usual: 1200,
    step: 50, label: 'condition.load', option: 'load' },
  /** Load centre ahead of the boot centre; at most a quarter of the contact length either way. */
  foreMm: { group: 'edge', si: 'fore', measure: 'stationMm', least: -600, most: 600, reach: [-150, 150], usual: 0,
    step: 5, label: 'condition.fore', option: 'fore' },

  /** H_V; found from 0.04 to 90 N/mm³ over 236 tests (Mössner et al., J. Glaciol. 2013, seen). Usual: groomed snow. */
  hardnessNPerMm3: { group: 'snow', si: 'hardness', measure: 'hardnessNPerMm3', least: 0.04, most: 90, usual: 1,
    label: 'condition.hardness', option: 'snow' },
  /** How far packed snow springs back: a point this much shallower than its groove carries nothing. */
  reboundMm: { group: 'snow', si: 'rebound', measure: 'depthMm', least: 0.05, most: 1, usual: 0.2,
    step: 0.05, label: 'condition.rebound', option: 'rebound' },

  /** Of the wall of snow that the edge leans on (our own values, see core/carve); left out, the hardness says. */
  wallStrengthKPa: { group: 'wall', si: 'wallStrength', measure: 'pressureKPa', least: 20, most: 20_000, usual: null,
    label: 'condition.wallStrength', option: 'wall' },

  /** With equipment. */
  massKg: { group: 'body', si: 'mass', measure: 'massKg', least: 20, most: 250, reach: [20, 150], usual: 48,
    step: 1, label: 'condition.mass', option: 'mass' },
  /** Of the body: it says how long the legs are. */
  heightM: { group: 'body', si: 'height', measure: 'bodyLength', least: 0.9, most: 2.3, reach: [1, 2.1], usual: 1.55,
    step: 0.01, label: 'condition.height', option: 'height' },
  /** Coefficient of friction, ski on snow. */
  friction: { group: 'glide', si: 'friction', measure: 'number', least: 0, most: 0.5, reach: [0, 0.3], usual: 0.05,
    step: 0.005, decimals: 3, label: 'condition.friction', option: 'friction' },
  /** C_dA: between a tuck (0.23 ± 0.03) and upright (0.66 ± 0.09 m²; Appl. Sci. 2022, 12, 902, seen). */
  dragAreaM2: { group: 'glide', si: 'dragArea', measure: 'areaM2', least: 0, most: 3, reach: [0, 1.2], usual: 0.45,
    step: 0.01, label: 'condition.dragArea', option: 'drag-area' },
  /** 1100 m above the sea or so. */
  airDensity: { group: 'glide', si: 'airDensity', measure: 'density', least: 0, most: 2, usual: 1.1,
    step: 0.01, label: 'condition.airDensity', option: 'air-density' },

  /** Part of the load on the outer ski (60 to 80 %, from memory). */
  outerShare: { group: 'model', si: 'outerShare', measure: 'number', least: 0.1, most: 1, usual: 0.7,
    step: 0.05, label: 'condition.outerShare', option: 'outer-share' },
  /** σ: share of the load that an edge slipping at a small angle takes, over that angle (our own law). */
  scrape: { group: 'model', si: 'scrape', measure: 'number', least: 0, most: 10, usual: 1,
    step: 0.1, label: 'condition.scrape', option: 'scrape' },

  /** Shortest and longest leg, skis to the mass; left out, the body's height says. */
  legShortestM: { group: 'legSpan', si: 'legShortest', measure: 'bodyLength', least: 0.1, most: 1.4, usual: null,
    step: 0.01, label: 'condition.legShortest', option: 'leg-min' },
  legLongestM: { group: 'legSpan', si: 'legLongest', measure: 'bodyLength', least: 0.11, most: 1.5, usual: null,
    step: 0.01, label: 'condition.legLongest', option: 'leg-max' },

  /** What the legs may do in a run whose edge angles are given: wide, so that the run says what it would take. */
  runLegSpeed: { group: 'legs', si: 'legSpeed', measure: 'legSpeed', least: 0.05, most: 10, usual: 1.5,
    step: 0.1, label: 'condition.legSpeed', option: 'leg-speed' },
  runPush: { group: 'legs', si: 'pushMost', measure: 'bodyWeights', least: 1.2, most: 20, usual: 8,
    step: 0.1, decimals: 1, label: 'condition.push', option: 'push-max' },
  runPushRate: { group: 'legs', si: 'pushRate', measure: 'bodyWeightRate', least: 0.5, most: 200, usual: 12,
    step: 1, label: 'condition.pushRate', option: 'push-rate' },

  /** What a skier can do who looks for the quickest turn; peaks up to 5 were measured (Supej & Holmberg 2019, seen). */
  pushBodyWeights: { group: 'limits', si: 'pushMost', measure: 'bodyWeights', least: 1.1, most: 8, reach: [1.2, 6], usual: 2.5,
    step: 0.1, decimals: 1, label: 'condition.push', option: 'push-max' },
  pushRateBodyWeights: { group: 'limits', si: 'pushRate', measure: 'bodyWeightRate', least: 1, most: 100, reach: [2, 40], usual: 12,
    step: 1, label: 'condition.pushRate', option: 'push-rate' },
  /** How fast the legs fold and stretch. */
  legSpeedMps: { group: 'limits', si: 'legSpeed', measure: 'legSpeed', least: 0.1, most: 5, reach: [0.2, 4], usual: 1,
    step: 0.1, label: 'condition.legSpeed', option: 'leg-speed' },
  /** 65.7 ± 1.7° and 71.0 ± 1.9° were measured in slalom (Reid et al. 2020, seen). */
  edgeMostDeg: { group: 'limits', si: 'edgeMost', measure: 'angleDeg', least: 10, most: 85, reach: [20, 80], usual: 70,
    step: 1, decimals: 0, label: 'condition.edgeMost', option: 'edge-max' },
  edgeRate: { group: 'limits', si: 'edgeRate', measure: 'angleRate', least: 1, most: 30, usual: 8,
    step: 0.5, label: 'condition.edgeRate', option: 'edge-rate' },
  /** Greatest difference of edge angle and lean. */
  angulationMostDeg: { group: 'limits', si: 'angulationMost', measure: 'angleDeg', least: 5, most: 70, reach: [10, 60], usual: 40,
    step: 1, decimals: 0, label: 'condition.angulationMost', option: 'angulation-max' },

  slopeDeg: { group: 'hill', si: 'slope', measure: 'angleDeg', least: 0, most: 60, reach: [0, 45], usual: 6,
    step: 1, decimals: 0, label: 'condition.slope', option: 'slope' },
  speedKmh: { group: 'start', si: 'startSpeed', measure: 'speedKmh', least: 1.8, most: 200, reach: [5, 150], usual: 20,
    step: 1, label: 'condition.startSpeed', option: 'start-speed' },
  /** Of two turns. */
  periodS: { group: 'turns', si: 'period', measure: 'time', least: 0.5, most: 20, reach: [0.8, 8], usual: 1.6,
    step: 0.1, label: 'condition.period', option: 'period' },
  turns: { group: 'turns', si: 'turns', measure: 'count', least: 1, most: 200, reach: [1, 24], usual: 6,
    step: 1, whole: true, label: 'condition.turns', option: 'turns' },
  /** Where banked turns change side, from the fall line. */
  traverseDeg: { group: 'banked', si: 'traverse', measure: 'angleDeg', least: 20, most: 85, usual: 60,
    step: 1, decimals: 0, label: 'condition.traverse' },

  gates: { group: 'set', si: 'gates', measure: 'count', least: 2, most: 200, reach: [2, 80], usual: 12,
    step: 1, whole: true, label: 'condition.gates', option: 'gates' },
  gateSpacingM: { group: 'gates', si: 'spacing', measure: 'distance', least: 2, most: 100, reach: [4, 60], usual: 8,
    step: 0.5, label: 'condition.spacing', option: 'spacing' },
  gateOffsetM: { group: 'gates', si: 'offset', measure: 'distance', least: 0, most: 40, reach: [0.1, 20], usual: 2.4,
    step: 0.1, label: 'condition.offset', option: 'offset' },
  /** From a gate's pole to the skis as they pass it. */
  clearanceM: { group: 'pole', si: 'clearance', measure: 'bodyLength', least: 0, most: 5, reach: [0, 2], usual: 0.3,
    step: 0.05, label: 'condition.clearance', option: 'clearance' },

  /** A bench press: its load, its place ahead of the boot centre, its supports inside the contact points. */
  benchLoadN: { group: 'bench', si: 'benchLoad', measure: 'force', least: 0, most: 20_000, reach: [0, 1000], usual: 300,
    step: 5, label: 'condition.benchLoad', option: 'load' },
  benchForeMm: { group: 'bench', si: 'benchFore', measure: 'stationMm', least: -1200, most: 1200, usual: 0,
    step: 5, label: 'condition.benchFore' },
  benchRearInMm: { group: 'bench', si: 'benchRearIn', measure: 'stationMm', least: 0, most: 1200, usual: 0,
    step: 5, label: 'condition.benchRearIn' },
  benchFrontInMm: { group: 'bench', si: 'benchFrontIn', measure: 'stationMm', least: 0, most: 1200, usual: 0,
    step: 5, label: 'condition.benchFrontIn' },

  /**
   * Lateral stiffness of boot and leg: an order of magnitude from memory (some 10 to 40), to be confirmed before relying
   * on it; from a soft child's boot to a plaster cast.
   */
  bootStiffnessNmPerDeg: { group: 'boot', si: 'bootStiffness', measure: 'bootStiffnessNmPerDeg', least: 2, most: 200, usual: 20,
    label: 'condition.bootStiffness' },

  /** What the file of a set may say of it; usual of a slalom, see core/course for the others. */
  courseSlopeDeg: { group: 'course', si: 'slope', measure: 'angleDeg', least: 0, most: 60, reach: [1, 40], usual: 20,
    step: 0.5, label: 'condition.slope', option: 'slope' },
  /** Kept all the way, or at the start. */
  courseSpeedKmh: { group: 'course', si: 'startSpeed', measure: 'speedKmh', least: 0, most: 150, reach: [5, 120], usual: 30,
    step: 1, label: 'condition.speed', option: 'speed' },
  /** As `edgeMostDeg`, of the set's own skier. */
  courseEdgeMostDeg: { group: 'course', si: 'greatestEdge', measure: 'angleDeg', least: 10, most: 85, reach: [40, 80], usual: 70,
    step: 1, label: 'condition.edgeMost', option: 'edge-max' },
  /** One for all gates. */
  gateWidthM: { group: 'course', si: 'gateWidth', measure: 'distance', least: 0.5, most: 20, usual: null,
    step: 0.5, label: 'condition.gateWidth' },
} as const satisfies Readonly<Record<string, Condition>>;
