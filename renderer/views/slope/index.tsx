import type { View } from '../view.ts';
import { SlopeReadings } from './readings.tsx';
import { SlopeStage } from './stage.tsx';

export const slopeView: View = {
  id: 'slope',
  question: 'slope',
  heading: 'frame.heading.slope',
  Stage: SlopeStage,
  Readings: SlopeReadings,
};
