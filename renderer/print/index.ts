/**
 * Paper: a page about a pair, the list of what is due, and the page for the start.
 *
 *   printSheet(name, id?)   the pair's sheet; the active pair's unless an id is given
 */
import './sheet.css';

export { Paper } from './paper.tsx';
export { printDue } from './print-due.tsx';
export { printSheet } from './print-sheet.tsx';
export { printStart } from './print-start.tsx';
