/** The help panel, what the model is not, and the cautions. */
export { CAUTION, CAUTIONS, SQUAD_CAUTIONS } from './cautions.ts';
export { AboutModel, aboutOpen, HelpPanel, helpOpen } from './help-panel.tsx';
export type { KeyGroup } from './keys.ts';
