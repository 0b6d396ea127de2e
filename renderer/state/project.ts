import { type Field, type FieldOf, USUAL } from '../../core/conditions/index.ts';
import type { Gate } from '../../core/course/index.ts';
import type { Pair, Rack, RackTune } from '../../core/pair/index.ts';
import type { Category, Edition } from '../../core/rules/index.ts';
import type { TurnShape } from '../../core/run/index.ts';
import type { System } from '../../core/units/index.ts';
import type { Unreadable } from './unreadable.ts';

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

/** Conditions a project always carries; those of a set belong to its course, the legs follow from the height. */
export type ConditionField = Exclude<Field, FieldOf<'course' | 'legSpan' | 'wall'>>;

/** What is asked of the skis, in the units people say: see core/conditions. */
export type Conditions = { readonly [F in ConditionField]: number } & {
  /** Left out, the hardness says. */
  readonly wallStrengthKPa?: number;
};

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
  /** Nobody goes faster, as a coach asks "at 40 km/h?"; else it is the speed at the start, 0 from rest. */
  readonly keepSpeed: boolean;
  /** On the measured slope profile that is open, in place of the slope. */
  readonly onProfile: boolean;
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

/** The hill the skis are sent down and the programme they are skied with. */
export interface SlopeSettings {
  readonly ground: 'even' | 'roller' | 'steepening' | 'file';
  readonly groundFile: TextFile | null;
  readonly programme: 'linked' | 'rhythm' | 'drawn' | 'file' | 'banked';
  readonly programmeFile: TextFile | null;
  /** How linked turns take up and give back their edge angle. */
  readonly shape: TurnShape;
  readonly drawn: readonly DrawnPoint[];
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
  readonly unreadable: readonly Unreadable[];
}

export const MAX_CHOSEN = 4;

const { courseSlopeDeg, courseSpeedKmh, courseEdgeMostDeg, ...usual } = USUAL;

/** A first start is a junior's: the demo rack is a junior squad's, and so are the usual values. */
export const DEFAULT_CONDITIONS: Conditions = usual;

export const DEFAULT_VIEW: ViewSettings = {
  question: 'shape',
  system: 'metric',
  theme: 'snow',
  exaggeration: 5,
  board: false,
  page: null,
};

export const DEFAULT_DUE: DueAfter = { edgeDays: 7, waxDays: 3 };

export const NO_COURSE: Course = {
  name: '',
  discipline: 'SL',
  gates: [],
  demo: false,
  inFile: null,
  slopeDeg: courseSlopeDeg,
  speedKmh: courseSpeedKmh,
  keepSpeed: false,
  onProfile: false,
  greatestEdgeDeg: courseEdgeMostDeg,
  gateWidthM: null,
  category: 'U16 boys',
  comments: [],
};

/** No edition of one's own; null is the newest that comes with the program. */
export const DEFAULT_RULES: RulesSettings = { opened: [], edition: null, lowerLevel: false };

export const DEFAULT_SLOPE: SlopeSettings = {
  ground: 'even',
  groundFile: null,
  programme: 'linked',
  programmeFile: null,
  shape: 'sine',
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
  unreadable: [],
};
