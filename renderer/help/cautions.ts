import type { Question } from '../state/index.ts';

/** The one line in the frame's foot, by what is being looked at. */
export const CAUTION: Record<Question, string> = {
  shape: 'Edges are sharp. On limits only the rulebook in force and the controller decide.',
  flex: 'A bench model of the ski. Nothing here sets or approves a binding.',
  edge: 'An idealised ski on uniform snow. No advice on how fast or where to ski, and no binding is set or approved.',
  slope: 'An idealised skier on uniform snow. No advice on how fast or where to ski.',
  set: 'Rules change: only the rulebook in force and the equipment controller decide.',
};

export const CAUTIONS: readonly string[] = [
  'The model is an idealised skier on uniform snow. It gives no advice on how fast or where to ski.',
  'It never sets or approves a binding. That is the work of a trained technician following the maker’s instructions and the standard in force. Loads may be shown; settings never are.',
  'Competition rules change. Limits are shown with their edition and how well they are established; only the rulebook in force and the equipment controller decide.',
  'Edges are sharp, and work with hot wax needs ventilation and care.',
  'Pairs, clubs and hills marked "demo data" are invented.',
];

export const LIMITS: readonly string[] = [
  'Snow is the same everywhere and along the whole edge.',
  'The groove is steady: every point of the edge follows one track.',
  'One ski is looked at, carrying a stated share of the load.',
  'The skier is a mass on one leg that leans and folds, without arms or poles, and makes no mistakes.',
  'Bends are small unless the large-bend form is switched on; the app says when the small-bend answer is off by more than 2 %.',
];

/** Of the ski room. */
export const SQUAD_CAUTIONS: readonly string[] = [
  'Edges are sharp: handle skis edge to edge and wear gloves at the vice.',
  'Hot wax fumes and burns: ventilate the room, keep the iron below smoking, never leave it on.',
];
