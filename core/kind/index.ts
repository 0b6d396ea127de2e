/** What a text that arrives holds: a pair, a rack, limits, gates, bench readings, ground, turns or a squad's sheet. */
export { type Identified, identify, type TextKind, textKinds } from './identify.ts';
