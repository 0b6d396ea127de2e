import type { PlainKey } from '../../core/language/index.ts';
import type { Question } from '../state/index.ts';

/** The one line in the frame's foot, by what is being looked at. */
export const CAUTION = {
  shape: 'help.caution.shape',
  flex: 'help.caution.flex',
  edge: 'help.caution.edge',
  slope: 'help.caution.slope',
  set: 'help.caution.set',
} as const satisfies Record<Question, PlainKey>;

export const CAUTIONS = [
  'help.cautionModel',
  'help.cautionBinding',
  'help.cautionRules',
  'help.cautionTuning',
  'help.cautionDemo',
] as const satisfies readonly PlainKey[];

export const LIMITS = [
  'help.limitSnow',
  'help.limitGroove',
  'help.limitOneSki',
  'help.limitSkier',
  'help.limitBend',
] as const satisfies readonly PlainKey[];

/** Of the ski room. */
export const SQUAD_CAUTIONS = ['help.cautionEdges', 'help.cautionWax'] as const satisfies readonly PlainKey[];
