import './squad.css';
import type { PageView } from '../views/view.ts';
import { SquadReadings } from './readings.tsx';
import { SquadStage } from './stage.tsx';

/** The whole squad's rack, opened from the rack's foot. */
export const squadPage: PageView = {
  id: 'squad',
  heading: 'Squad rack',
  Stage: SquadStage,
  Readings: SquadReadings,
};
