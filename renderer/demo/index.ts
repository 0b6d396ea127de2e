/** What the program comes with: invented pairs, sets and a squad, every one marked as demo data. */
export { demoPairs, demoRack } from './demo-pairs.ts';
export { demoSets } from './demo-sets.ts';
export { demoSheet } from './demo-squad.ts';
