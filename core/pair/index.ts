export type { Layup, LayupLayer, Ski, Stiffness } from './ski.ts';
