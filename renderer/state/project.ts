import { USUAL_BOOT_STIFFNESS } from '../../core/boot/index.ts';
import { USUAL_HARDNESS } from '../../core/carve/index.ts';
import { type Gate, setRanges } from '../../core/course/index.ts';
import type { Pair, Rack, RackTune } from '../../core/pair/index.ts';
import type { Category, Edition } from '../../core/rules/index.ts';
import type { TurnShape } from '../../core/run/index.ts';
import { SKIER_PRESETS, USUAL_SKIER } from '../../core/skier/index.ts';
import type { System } from '../../core/units/index.ts';
import type { SetAside } from './set-aside.ts';

const DEGREE = Math.PI / 180;

export type Question = 'shape' | 'flex' | 'edge' | 'slope' | 'set';
export const QUESTIONS: readonly Question[] = ['shape', 'flex', 'edge', 'slope', 'set'];

export type Theme = 'snow' | 'night' | 'projector';
export const THEMES: readonly Theme[] = ['snow', 'night', 'projector'];

/** One pair in the rack. `pair` is always valid: an edit that is not stays in its form. */
export interface RackEntry {
  readonly id: string;
  readonly pair: Pair;
  /** Where the pair is kept; absent until it is saved or when it came with the program. */
  readonly fileToken?: string;
  readonly fileName?: string;
  /** The pair as last saved or loaded; another object than `pair` means unsaved changes. */
  readonly saved: Pair | null;
  /** The entry lives in the open rack file and is saved with it. */
  readonly inRackFile?: boolean;
  /** Says why the entry cannot be edited, for example a file of a newer version. */
  readonly readOnly?: string;
}

/** What is asked of the skis, in the units people say. */
export interface Conditions {
  readonly edgeDeg: number;
  /** Force on the ski, normal to its base. */
  readonly loadN: number;
  /** H_V. */
  readonly hardnessNPerMm3: number;
  /** Load centre ahead of the boot centre. */
  readonly foreMm: number;
  readonly speedKmh: number;
  readonly slopeDeg: number;
  /** Skier with equipment. */
  readonly massKg: number;
  /** Of the skier's body: it says how long the legs are. */
  readonly heightM: number;
  readonly friction: number;
  readonly dragAreaM2: number;
  readonly airDensity: number;
  /** Lateral stiffness of boot and leg. */
  readonly bootStiffnessNmPerDeg: number;
  readonly periodS: number;
  readonly turns: number;
  /** Bench press. */
  readonly benchLoadN: number;
  /** Where the press stands, ahead of the boot centre. */
  readonly benchForeMm: number;
  /** How far the supports stand inside the contact points. */
  readonly benchRearInMm: number;
  readonly benchFrontInMm: number;
  /** A rhythmic set. */
  readonly gates: number;
  readonly gateSpacingM: number;
  readonly gateOffsetM: number;
}

/** The set of gates being asked about. */
export interface Course {
  readonly name: string;
  readonly discipline: 'SL' | 'GS';
  /** In order down the hill. */
  readonly gates: readonly Gate[];
  /** Came with the program and is invented. */
  readonly demo: boolean;
  /** The text of the file it came from or went to last; null while it is in none. */
  readonly inFile: string | null;
  /** The slope it is set on; of its own, as is the speed asked of it. */
  readonly slopeDeg: number;
  readonly speedKmh: number;
  /** Keep the speed all the way, as a coach asks "at 40 km/h?"; else it is the speed at the start. */
  readonly keepSpeed: boolean;
  readonly greatestEdgeDeg: number;
  /** One for all gates; null when nobody has said. */
  readonly gateWidthM: number | null;
  /** Who races. */
  readonly category: Category;
  /** Lines of its file that are no gates, carried along. */
  readonly comments: readonly string[];
}

/** Editions of competition limits opened from files, the label of the one checked against, and how strictly. */
export interface RulesSettings {
  readonly opened: readonly Edition[];
  readonly edition: string | null;
  /** A lower-level race, which accepts a little less length where the edition says so. */
  readonly lowerLevel: boolean;
}

/** A table opened from a file, kept as its text. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** One point of a programme drawn by hand: s and degrees, positive in right turns. */
export interface DrawnPoint {
  readonly at: number;
  readonly deg: number;
}

/** Limits of a skier in a rhythm, in the units people say. */
export interface SkierLimits {
  /** Greatest push of the legs. */
  readonly pushBodyWeights: number;
  /** How fast it may build up and fall. */
  readonly pushRateBodyWeights: number;
  /** How fast the legs fold and stretch. */
  readonly legSpeedMps: number;
  readonly edgeDeg: number;
  readonly angulationDeg: number;
}

/** The hill the skis are sent down and the programme they are skied with. */
export interface SlopeSettings {
  readonly ground: 'even' | 'roller' | 'steepening' | 'file';
  readonly groundFile: TextFile | null;
  readonly programme: 'linked' | 'rhythm' | 'drawn' | 'file' | 'banked';
  readonly programmeFile: TextFile | null;
  /** How linked turns take up and give back their edge angle. */
  readonly shape: TurnShape;
  /** Where banked turns change side, from the fall line. */
  readonly traverseDeg: number;
  readonly drawn: readonly DrawnPoint[];
  /** From a gate's pole to the skis as they pass it. */
  readonly clearanceM: number;
  /** What the skier of a rhythm can do. */
  readonly limits: SkierLimits;
  /** The pair that goes along: an id, null for none, absent for the first chosen that is not active. */
  readonly ghost?: string | null | undefined;
}

/** The skis on the board; null where the board picks one itself. */
export interface BoardSettings {
  readonly skis: readonly [string | null, string | null];
  readonly sideBySide: boolean;
}

/** A page laid over the questions: the whole squad's rack, or the chosen pairs side by side. */
export type Page = 'squad' | 'compare';

/** How things are shown. Not undone: undo gives back work, not the look of the room. */
export interface ViewSettings {
  readonly question: Question;
  readonly system: System;
  readonly theme: Theme;
  /** Width exaggeration of top views. */
  readonly exaggeration: 1 | 5;
  readonly board: boolean;
  readonly page: Page | null;
}

/** Days after which edges and wax are due again. */
export interface DueAfter {
  readonly edgeDays: number;
  readonly waxDays: number;
}

/** The rack file that is open, if one is: what in it is not a readable pair is carried along on saving. */
export interface RackFile {
  readonly token: string;
  readonly name: string;
  readonly rack: Rack;
  /** Ids in the file as last read or saved, so that a removal counts as unsaved. */
  readonly savedIds: readonly string[];
  readonly readOnly: boolean;
}

export interface Project {
  readonly rack: readonly RackEntry[];
  readonly rackFile: RackFile | null;
  /** What was done to which pair and when, oldest first as added; unreadable entries are carried along. */
  readonly tuneLog: readonly RackTune[];
  readonly dueAfter: DueAfter;
  /** Up to four rack ids; a pair's place here is its letter. `null` is a letter not in use. */
  readonly chosen: readonly (string | null)[];
  /** The chosen pair that handles and large readings belong to. */
  readonly activeId: string | null;
  readonly conditions: Conditions;
  readonly course: Course;
  readonly rules: RulesSettings;
  readonly slope: SlopeSettings;
  readonly board: BoardSettings;
  readonly view: ViewSettings;
  /** Parts of earlier work that this version cannot read, kept until taken off the list. */
  readonly setAside: readonly SetAside[];
}

export const MAX_CHOSEN = 4;

/** A first start is a junior's: the demo rack is a junior squad's. */
const FIRST = SKIER_PRESETS[0]!;
/** Written short: 7, not 6.999…. */
const short = (value: number): number => Number(value.toFixed(6));

export const DEFAULT_CONDITIONS: Conditions = {
  edgeDeg: short(FIRST.edge / DEGREE),
  loadN: 1200,
  hardnessNPerMm3: USUAL_HARDNESS,
  foreMm: 0,
  speedKmh: short(FIRST.startSpeed * 3.6),
  slopeDeg: short(FIRST.slope / DEGREE),
  massKg: FIRST.mass,
  heightM: FIRST.height,
  friction: 0.05,
  dragAreaM2: 0.4,
  airDensity: 1.1,
  bootStiffnessNmPerDeg: Math.round(USUAL_BOOT_STIFFNESS * DEGREE),
  periodS: FIRST.period,
  turns: 6,
  benchLoadN: 300,
  benchForeMm: 0,
  benchRearInMm: 0,
  benchFrontInMm: 0,
  gates: 12,
  gateSpacingM: FIRST.spacing,
  gateOffsetM: FIRST.offset,
};

export const DEFAULT_VIEW: ViewSettings = {
  question: 'shape',
  system: 'metric',
  theme: 'snow',
  exaggeration: 5,
  board: false,
  page: null,
};

export const DEFAULT_DUE: DueAfter = { edgeDays: 7, waxDays: 3 };

/** What the set's own inputs accept, in their units; its file accepts the same. */
export const COURSE_RANGES = setRanges;

export const NO_COURSE: Course = {
  name: '',
  discipline: 'SL',
  gates: [],
  demo: false,
  inFile: null,
  slopeDeg: 20,
  speedKmh: 30,
  keepSpeed: true,
  greatestEdgeDeg: 65,
  gateWidthM: null,
  category: 'men',
  comments: [],
};

/** No edition of one's own; null is the newest that comes with the program. */
export const DEFAULT_RULES: RulesSettings = { opened: [], edition: null, lowerLevel: false };

export const DEFAULT_LIMITS: SkierLimits = {
  pushBodyWeights: FIRST.pushMost,
  pushRateBodyWeights: USUAL_SKIER.pushRate,
  legSpeedMps: USUAL_SKIER.legSpeed,
  edgeDeg: short(USUAL_SKIER.edgeMost / DEGREE),
  angulationDeg: short(USUAL_SKIER.angulationMost / DEGREE),
};

export const DEFAULT_SLOPE: SlopeSettings = {
  ground: 'even',
  groundFile: null,
  programme: 'linked',
  programmeFile: null,
  shape: 'sine',
  traverseDeg: 60,
  clearanceM: FIRST.clearance,
  limits: DEFAULT_LIMITS,
  drawn: [0, 42, 0, -48, 0, 52, 0, -30, 0].map((deg, i) => ({ at: i * 0.8, deg })),
};

export const DEFAULT_BOARD: BoardSettings = { skis: [null, null], sideBySide: true };

export const EMPTY_PROJECT: Project = {
  rack: [],
  rackFile: null,
  tuneLog: [],
  dueAfter: DEFAULT_DUE,
  chosen: [null, null, null, null],
  activeId: null,
  conditions: DEFAULT_CONDITIONS,
  course: NO_COURSE,
  rules: DEFAULT_RULES,
  slope: DEFAULT_SLOPE,
  board: DEFAULT_BOARD,
  view: DEFAULT_VIEW,
  setAside: [],
};
