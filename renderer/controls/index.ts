/** Sliders and choices that more than one page shows. */
import './controls.css';

export { ConditionControl, ConditionControls, conditionProps } from './condition.tsx';
export { ConditionSliders } from './condition-sliders.tsx';
export { PresetChoice } from './preset-choice.tsx';
export { TableProgress } from './table-progress.tsx';
