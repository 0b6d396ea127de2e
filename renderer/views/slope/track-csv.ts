import { holdAtEnds, type Track, type TurnRadius } from '../../../core/run/index.ts';
import { DEGREE, KMH } from '../../../core/units/index.ts';
import { phaseWords } from './skids.ts';

/** Every so many rows of 10 ms. */
const EVERY = 2;

type Column = readonly [
  string,
  (track: Track, row: number, ends: ReturnType<typeof holdAtEnds>) => number | string,
];

/** A run to write, with what its turns were worked out from. */
interface NamedRun {
  readonly name: string;
  readonly track: Track;
  readonly turn: TurnRadius;
}

const COLUMNS: readonly Column[] = [
  ['time (s)', (k, i) => k.t[i]!],
  ['across, skier’s right + (m)', (k, i) => k.x[i]!],
  ['down the slope (m)', (k, i) => k.y[i]!],
  ['mass across (m)', (k, i) => k.massX[i]!],
  ['mass down the slope (m)', (k, i) => k.massY[i]!],
  ['leg (m)', (k, i) => k.leg[i]!],
  ['distance (m)', (k, i) => k.distance[i]!],
  ['drop (m)', (k, i) => k.drop[i]!],
  ['heading from the fall line, right + (deg)', (k, i) => k.heading[i]! / DEGREE],
  ['speed of the skier (km/h)', (k, i) => k.speed[i]! / KMH],
  ['speed of the skis (km/h)', (k, i) => k.skiSpeed[i]! / KMH],
  ['radius (m)', (k, i) => k.radius[i]!],
  ['edge angle, right turns + (deg)', (k, i) => k.edge[i]! / DEGREE],
  ['lean (deg)', (k, i) => k.lean[i]! / DEGREE],
  ['load (N)', (k, i) => k.load[i]!],
  ['load (body weights)', (k, i) => k.loadBodyWeights[i]!],
  ['grip to spare (deg)', (k, i) => k.hold[i]! / DEGREE],
  ['grip to spare at the tip (deg)', (_, i, ends) => ends.tip[i]! / DEGREE],
  ['grip to spare at the tail (deg)', (_, i, ends) => ends.tail[i]! / DEGREE],
  ['slip (deg)', (k, i) => k.slip[i]! / DEGREE],
  ['given by the drop (J)', (k, i) => k.energy.drop[i]!],
  ['kinetic energy gained (J)', (k, i) => k.energy.kinetic[i]!],
  ['friction work (J)', (k, i) => k.energy.friction[i]!],
  ['drag work (J)', (k, i) => k.energy.drag[i]!],
  ['scrape work (J)', (k, i) => k.energy.scrape[i]!],
  ['work of the legs (J)', (k, i) => k.energy.legs[i]!],
  ['state', (k, i) => phaseWords(k, i)],
];

const cell = (value: number | string): string | number =>
  typeof value === 'string' ? value : Number.isFinite(value) ? Number(value.toPrecision(7)) : '';

/** Tracks as rows for a file, headings first; metric, whatever the screen shows. */
export function trackRows(tracks: readonly NamedRun[]) {
  const rows: (string | number)[][] = [['pair', ...COLUMNS.map(([heading]) => heading)]];
  for (const { name, track, turn } of tracks) {
    const ends = holdAtEnds(track, turn);
    for (let i = 0; i < track.t.length; i += EVERY) {
      rows.push([name, ...COLUMNS.map(([, read]) => cell(read(track, i, ends)))]);
    }
  }
  return rows;
}
