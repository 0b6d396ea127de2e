import './compare.css';
import type { PageView } from '../view.ts';
import { CompareReadings } from './readings.tsx';
import { CompareStage } from './stage.tsx';

/** The chosen pairs laid side by side, opened from the rack. */
export const comparePage: PageView = {
  id: 'compare',
  heading: 'frame.heading.compare',
  Stage: CompareStage,
  Readings: CompareReadings,
};
