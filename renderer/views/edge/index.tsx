import './edge.css';
import type { View } from '../view.ts';
import { EdgeReadings } from './readings.tsx';
import { EdgeStage } from './stage.tsx';

export const edgeView: View = {
  id: 'edge',
  question: 'edge',
  heading: 'frame.heading.edge',
  Stage: EdgeStage,
  Readings: EdgeReadings,
};
