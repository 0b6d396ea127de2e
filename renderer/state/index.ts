/**
 * The state of the app: one immutable `Project` in a signal, changed only through this door.
 *
 * Reading (all signals; use `.value` inside components):
 *   project, conditions, course, view   what was put in
 *   chosenPairs, activePair             chosen pairs with ski (SI), mark (letter, colour, dash)
 *   undoLabel, redoLabel, unsavedEntries, status, tasks
 *
 * Changing:
 *   changeConditions('Edge angle', { edgeDeg: 52 }, 'edgeDeg')   a third argument makes a drag one undo step
 *   changePair(id, 'Waist width', { waistWidthMm: 66 }, 'waist') refused when invalid, said in the foot
 *   edit(label, rackEdit, key?), settle(), undo(), redo(); editWithoutUndo(change) is not undone, amendAllSteps(change) holds in every step
 *   changeCourse('Gate 3', moveGate(2, { x: 1.5 }), 'gate 3')    the gates; `course` reads them
 *   changeSlope('Ground', { ground: 'roller' }), changeBoard('Skis', { sideBySide: false })   `slope`, `board` read them
 *   changeView({ question: 'edge' })                             not undone; { page: 'squad' } lays a page over it
 *   report(text, 'error'?), showTask(id, task)                   the line in the foot
 *
 * Deriving: `const beam = perPair(pair => …)` remembers per pair object; wrap it in `computed` where other
 * signals come in.
 */

export { readingsOf } from './bench-readings.ts';
export { board, changeBoard } from './board-settings.ts';
export {
  asUsual,
  changeCourse,
  course,
  courseText,
  courseUnsaved,
  markCourseSaved,
  moveGate,
  putGate,
  removeGate,
} from './course-edits.ts';
export {
  activePair,
  type ChosenPair,
  chosenPairs,
  isUnsaved,
  perPair,
  rackFileUnsaved,
  ski,
  tuneLogUnsaved,
  unsavedEntries,
} from './derived.ts';
export { DISCIPLINES, disciplineText } from './discipline-text.ts';
export { draftOf, projectFrom } from './draft.ts';
export {
  type DraftChanges,
  type DraftRecords,
  draftChanges,
  projectFromRecords,
  type ReadDraft,
} from './draft-records.ts';
export { fileStem } from './file-stem.ts';
export { type DraftKeeper, keepDraft } from './keep-draft.ts';
export { PAIR_MARKS, type PairMark } from './letters.ts';
export { newId } from './new-id.ts';
export { extraOf, ownerOf, withOwner } from './owner.ts';
export { changePair } from './pair-edits.ts';
export { choosePreset, presetChosen, SKIER_PRESETS } from './presets.ts';
export {
  type BoardSettings,
  type ConditionField,
  type Conditions,
  type Course,
  DEFAULT_BOARD,
  DEFAULT_CONDITIONS,
  DEFAULT_DUE,
  DEFAULT_SLOPE,
  type DrawnPoint,
  type DueAfter,
  EMPTY_PROJECT,
  NO_COURSE,
  type Page,
  type Project,
  type Question,
  type RackEntry,
  type RackFile,
  type SlopeSettings,
  type TextFile,
  THEMES,
  type Theme,
  type ViewSettings,
} from './project.ts';
export {
  activate,
  addEntries,
  choose,
  chooseOnly,
  type Edit,
  freeLetter,
  joinsRackFile,
  letterFree,
  markRackSaved,
  markSaved,
  removeEntries,
  removeEntry,
  replacePair,
  unchoose,
} from './rack-edits.ts';
export { changeRules, rules } from './rules-settings.ts';
export { settingsNotTaken } from './settings-not-taken.ts';
export { changeSlope, slope } from './slope-settings.ts';
export { report, type Status, showTask, status, type Task, tasks } from './status.ts';
export {
  amendAllSteps,
  changeConditions,
  changeView,
  conditions,
  edit,
  editWithoutUndo,
  load,
  project,
  redo,
  redoLabel,
  settle,
  undo,
  undoLabel,
  view,
} from './store.ts';
export { addTune, belongsTo, removeTune, setDueAfter, tuneLogInFile, tunesOf } from './tune-log.ts';
export { dismiss, type Unreadable as SetAside, unreadableDraft as draftAside } from './unreadable.ts';
export { allInWords, errorWords, faultsInWords, inWords, t } from './words.ts';
