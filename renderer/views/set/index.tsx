import type { View } from '../view.ts';
import { SetReadings } from './readings.tsx';
import { SetStage } from './stage.tsx';

export const setView: View = {
  id: 'set',
  question: 'set',
  heading: 'frame.heading.set',
  Stage: SetStage,
  Readings: SetReadings,
};
