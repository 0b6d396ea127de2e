/**
 * Runs to be tried, from the mild to the outermost that is accepted, and what must be true of every answer.
 */
import { NAMED_SNOWS, usualWallStrength } from '../../../core/carve/index.ts';
import {
  bankedTurns,
  cosineTurn,
  demoProfiles,
  drawnEdges,
  evenSlope,
  linkedTurns,
  type Programme,
  profileThrough,
  type Run,
  type RunConditions,
  type RunFailure,
  tableTurn,
} from '../../../core/run/index.ts';
import { demoTable } from './demo-table.ts';

const DEGREE = Math.PI / 180;
const [, ...UNEVEN] = demoProfiles();

export interface RunCase {
  readonly name: string;
  readonly conditions: RunConditions;
}

/** Every edge angle at every speed on every slope, 480 of them: four turns of 2.5 s a pair. */
export function gridOfRuns(): RunCase[] {
  const cases: RunCase[] = [];
  for (const edge of [10, 20, 30, 40, 50, 60, 70, 75]) {
    for (const speed of [3, 7, 12, 18, 24, 30]) {
      for (const slope of [2, 5, 8, 11, 14, 17, 20, 25, 30, 35]) {
        cases.push({
          name: `${edge}° at ${speed} m/s on ${slope}°`,
          conditions: {
            turn: tableTurn(demoTable()),
            profile: evenSlope(slope * DEGREE),
            programme: linkedTurns({ peakEdge: edge * DEGREE, period: 2.5, turns: 4 }),
            mass: 75,
            friction: 0.05,
            dragArea: 0.45,
            airDensity: 1.1,
            startSpeed: speed,
            baseBevel: 0.5 * DEGREE,
          },
        });
      }
    }
  }
  return cases;
}

/** Numbers from 0 to 1, the same ones for the same seed (Park & Miller 1988, from memory). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Cases drawn at random, the same ones for the same seed. */
export function randomRuns(count: number, seed: number): RunCase[] {
  const random = numbers(seed);
  const between = (from: number, to: number) => from + (to - from) * random();
  const oneOf = <T>(...from: readonly T[]): T => from[Math.floor(random() * from.length)]!;

  const drawn = (peak: number, period: number): Programme => {
    const at = [0];
    const edges = [0];
    for (let side = oneOf(-1, 1); at.length < 9; side = -side) {
      at.push(
        at[at.length - 1]! + between(0.2, 0.35) * period,
        at[at.length - 1]! + between(0.4, 0.6) * period,
      );
      edges.push(side * between(0.3, 1) * peak, 0);
    }
    return drawnEdges(at, edges);
  };

  const cases: RunCase[] = [];
  while (cases.length < count) {
    const peakDeg = between(1, 75);
    const period = between(0.8, 6);
    const startSpeed = between(1, 35);
    const slopeDeg = between(0, 35);
    const kind = oneOf('sine', 'trapezoid', 'distance', 'drawn', 'banked');
    const ground = oneOf('even', 'even', 'demo', 'own roller');
    const height = between(2, 8);
    const shortest = between(0.3, 0.8);
    const snow = oneOf(...NAMED_SNOWS);
    const contactLength = between(0.9, 1.8);
    const hardness = 1e9 * snow.hardnessNPerMm3;
    const peakEdge = peakDeg * DEGREE;
    const turns = Math.round(between(1, 4));
    const first = oneOf('right', 'left');
    const sidecut = between(8, 35);
    const programme =
      kind === 'drawn'
        ? drawn(peakEdge, period)
        : kind === 'banked'
          ? bankedTurns(between(20, 80) * DEGREE, turns, first)
          : kind === 'distance'
            ? linkedTurns({
                peakEdge,
                period: Math.max(4, period * startSpeed),
                turns,
                first,
                per: 'distance',
              })
            : linkedTurns({ peakEdge, period, turns, first, shape: kind });
    cases.push({
      name: `${cases.length}: ${kind} ${peakDeg.toFixed(0)}°, ${period.toFixed(1)} s, ${startSpeed.toFixed(0)} m/s, ${ground} ${slopeDeg.toFixed(0)}°, leg from ${shortest.toFixed(2)} m, ${snow.name}`,
      conditions: {
        turn: oneOf(tableTurn(demoTable(sidecut)), cosineTurn(sidecut, { contactLength, hardness })),
        profile:
          ground === 'even'
            ? evenSlope(slopeDeg * DEGREE)
            : ground === 'demo'
              ? oneOf(...UNEVEN)
              : profileThrough(
                  Array.from({ length: 60 }, (_, i) => 2 * i),
                  Array.from(
                    { length: 60 },
                    (_, i) =>
                      -2 * i * Math.tan(slopeDeg * DEGREE) + 0.1 * height * Math.cos((2 * i) / height),
                  ),
                ),
        programme,
        mass: between(25, 150),
        friction: between(0, 0.2),
        dragArea: between(0, 1),
        airDensity: 1.1,
        startSpeed,
        legShortest: shortest,
        legLongest: shortest + between(0.1, 0.6),
        baseBevel: between(0, 2) * DEGREE,
        contactLength,
        outerShare: between(0.5, 1),
        wallStrength: oneOf(Infinity, usualWallStrength(hardness)),
      },
    });
  }
  return cases;
}

/** How far between nodes, where nothing is asked, a limit may be passed: rad, and a share. */
const HOLD_SLACK = 0.5 * DEGREE;
const WALL_SLACK = 0.02;
/** The width of the shelf, and the edge angle past which an edge has bitten whatever the speed it is tipped at, rad. */
const SHELF = DEGREE;
const BITTEN = 8 * DEGREE;

/** What is wrong with an answer; nothing of one that is as it must be. */
export function faultsOf({ conditions }: RunCase, answer: Run | RunFailure): string[] {
  if (!answer.ok) {
    return answer.limit === '' || !Number.isFinite(answer.by) || !Number.isFinite(answer.at)
      ? [`refused for “${answer.limit}” at ${answer.at} s by ${answer.by}`]
      : [];
  }
  const { track } = answer;
  const { summary } = track;
  const faults: string[] = [];
  for (const [name, column] of Object.entries(track)) {
    if (!(column instanceof Float64Array)) continue;
    if (column.some(value => Number.isNaN(value))) faults.push(`${name} is not a number`);
  }
  if (!(summary.energyErrorRatio < 1e-6)) faults.push(`energy open by ${summary.energyErrorRatio}`);
  let hold = Infinity;
  track.hold.forEach((value, i) => {
    if (track.load[i]! > 0 && Math.abs(track.edge[i]!) > BITTEN) hold = Math.min(hold, value);
  });
  if (hold < -SHELF - HOLD_SLACK) faults.push(`hold passed by ${((-hold - SHELF) / DEGREE).toFixed(2)}°`);
  if (conditions.programme.kind !== 'banked' && summary.maxWall > 1 + WALL_SLACK) {
    faults.push(`wall broken, ${summary.maxWall}`);
  }
  if (track.speed.some(speed => !(speed > 0))) faults.push('comes to a stand');
  return faults;
}
