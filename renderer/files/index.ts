/**
 * One door for whatever comes from outside, and for what is saved:
 *
 *   importFile(file, wanted?)   a file opened, dropped, handed over or pasted goes where what it holds belongs
 *   openFiles(wanted?)      asks for files and takes them in
 *   saveEntry, saveRack, saveAll, saveCourse
 *
 * Under them what a view has to show: `looking` (a sheet before it is taken in), `waitingRacks`, `fileProblems`
 * of a set, `editionProblems` of limits.
 */
export { type FlexSheet, flexSheet } from './bench-files.ts';
export { courseFileName, fileProblems, saveCourse, takeCourse } from './course-files.ts';
export { importFile, openFiles } from './door.ts';
export { editionProblems, takeEdition } from './edition-files.ts';
export { exportTable } from './export-table.ts';
export type { SheetImport, SheetLine } from './import-sheet.ts';
export { lookOver } from './import-sheet.ts';
export type { Incoming } from './incoming.ts';
export { answer, waitingRacks } from './rack-files.ts';
export { READ } from './reading.ts';
export { saveAll, saveEntry, saveRack } from './saving.ts';
export { looking, nextSheet, saveFaults, sheetsWaiting, takePairs } from './sheet-files.ts';
