/**
 * Paper: one page about a pair, or any other page a room wants printed.
 *
 *   printSheet(name, id?)                 the pair's sheet; the active pair's unless an id is given
 *   printPaper(what, file, () => <…/>)    anything else; `Paper` in the frame holds it while it is printed
 */
import './sheet.css';

export { Paper, printPaper } from './paper.tsx';
export { printSheet } from './print-sheet.tsx';
