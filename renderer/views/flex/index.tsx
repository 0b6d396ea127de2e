import type { View } from '../view.ts';
import { FlexReadings } from './readings.tsx';
import { FlexStage } from './stage.tsx';

export const flexView: View = {
  id: 'flex',
  question: 'flex',
  heading: 'frame.heading.flex',
  Stage: FlexStage,
  Readings: FlexReadings,
};
