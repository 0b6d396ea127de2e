import './squad.css';
import { SquadReadings } from './readings.tsx';
import { SquadStage } from './stage.tsx';

/** The whole squad's rack, opened from the rack's foot. */
export const squadPage = {
  id: 'squad',
  heading: 'frame.heading.squad' as const,
  Stage: SquadStage,
  Readings: SquadReadings,
};
