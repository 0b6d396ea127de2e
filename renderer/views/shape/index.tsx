import type { View } from '../view.ts';
import { ShapeReadings } from './readings.tsx';
import { ShapeStage } from './stage.tsx';

export const shapeView: View = {
  id: 'shape',
  question: 'shape',
  heading: 'frame.heading.shape',
  Stage: ShapeStage,
  Readings: ShapeReadings,
};
