/**
 * Skiers with a hill and a rhythm that suit them: where a demonstration begins. Our own choice, found by running the
 * demo pairs: no edge slips, and past 10° of edge there is grip to spare all the way down. They are no norm of an
 * age and no advice. SI, rad.
 */

const DEGREE = Math.PI / 180;
const KMH = 1 / 3.6;

export type PresetId = 'junior-slalom' | 'junior-giant-slalom' | 'senior-slalom' | 'senior-giant-slalom';

export interface SkierPreset {
  readonly id: PresetId;
  readonly name: string;
  readonly discipline: 'SL' | 'GS';
  readonly status: 'own choice';
  /** Body height, m, and mass with equipment, kg. */
  readonly height: number;
  readonly mass: number;
  /** Of an even hill, rad. */
  readonly slope: number;
  /** m/s. */
  readonly startSpeed: number;
  /** Edge angle at the peak of a turn, rad; time for two turns, s. */
  readonly edge: number;
  readonly period: number;
  /** Gates down the hill and from side to side, and the skis' way past a pole, m. */
  readonly spacing: number;
  readonly offset: number;
  readonly clearance: number;
  /** Greatest push of the legs, body weights. */
  readonly pushMost: number;
}

export const SKIER_PRESETS: readonly SkierPreset[] = [
  {
    id: 'junior-slalom',
    name: 'Junior slalom',
    discipline: 'SL',
    status: 'own choice',
    height: 1.55,
    mass: 48,
    slope: 6 * DEGREE,
    startSpeed: 20 * KMH,
    edge: 50 * DEGREE,
    period: 1.6,
    spacing: 8,
    offset: 2.4,
    clearance: 0.3,
    pushMost: 2.5,
  },
  {
    id: 'junior-giant-slalom',
    name: 'Junior giant slalom',
    discipline: 'GS',
    status: 'own choice',
    height: 1.65,
    mass: 55,
    slope: 7 * DEGREE,
    startSpeed: 30 * KMH,
    edge: 45 * DEGREE,
    period: 2.2,
    spacing: 20,
    offset: 5,
    clearance: 0.5,
    pushMost: 2.5,
  },
  {
    id: 'senior-slalom',
    name: 'Senior slalom',
    discipline: 'SL',
    status: 'own choice',
    height: 1.78,
    mass: 80,
    slope: 9 * DEGREE,
    startSpeed: 26 * KMH,
    edge: 60 * DEGREE,
    period: 1.6,
    spacing: 10,
    offset: 3.2,
    clearance: 0.3,
    pushMost: 3,
  },
  {
    id: 'senior-giant-slalom',
    name: 'Senior giant slalom',
    discipline: 'GS',
    status: 'own choice',
    height: 1.78,
    mass: 80,
    slope: 7 * DEGREE,
    startSpeed: 40 * KMH,
    edge: 55 * DEGREE,
    period: 2.2,
    spacing: 25,
    offset: 8,
    clearance: 0.5,
    pushMost: 3,
  },
];

/** Edge angle over which grip is judged, rad: under it the skis change sides. Our own choice. */
export const GRIP_FROM = 10 * DEGREE;
