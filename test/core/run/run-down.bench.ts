import { bench } from 'vitest';
import { bankedTurns, evenSlope, linkedTurns, runDown, tableTurn } from '../../../core/run/index.ts';
import { demoTable } from './demo-table.ts';

const turn = tableTurn(demoTable());
const skier = { turn, mass: 75, friction: 0.04, dragArea: 0.45, airDensity: 1.1, startSpeed: 7 };
const profile = evenSlope(0.22);
const linked = linkedTurns({ peakEdge: 1.05, period: 3, turns: 40 });

bench('60 s of linked turns, rows every millisecond', () => {
  runDown({ ...skier, profile, programme: linked }, { outputStep: 0.001 });
});

bench('60 s of linked turns, rows every hundredth', () => {
  runDown({ ...skier, profile, programme: linked }, { outputStep: 0.01 });
});

bench('40 banked turns, rows every hundredth', () => {
  runDown({ ...skier, profile: evenSlope(0.12), programme: bankedTurns(1, 40) }, { outputStep: 0.01 });
});
