import type { PlainKey } from '../../../core/language/index.ts';
import { holdAtEnds, type Track, type TurnRadius } from '../../../core/run/index.ts';
import { DEGREE, KMH } from '../../../core/units/index.ts';
import { t } from '../../state/index.ts';
import { phaseWords } from './skids.ts';

/** Every so many rows of 10 ms. */
const EVERY = 2;

type Column = readonly [
  PlainKey,
  (track: Track, row: number, ends: ReturnType<typeof holdAtEnds>) => number | string,
];

/** A run to write, with what its turns were worked out from. */
interface NamedRun {
  readonly name: string;
  readonly track: Track;
  readonly turn: TurnRadius;
}

const COLUMNS: readonly Column[] = [
  ['slope.column.time', (k, i) => k.t[i]!],
  ['slope.column.x', (k, i) => k.x[i]!],
  ['slope.column.y', (k, i) => k.y[i]!],
  ['slope.column.massAcross', (k, i) => k.massX[i]!],
  ['slope.column.massDown', (k, i) => k.massY[i]!],
  ['slope.column.leg', (k, i) => k.leg[i]!],
  ['slope.column.distance', (k, i) => k.distance[i]!],
  ['slope.column.dropM', (k, i) => k.drop[i]!],
  ['slope.column.heading', (k, i) => k.heading[i]! / DEGREE],
  ['slope.column.speed', (k, i) => k.speed[i]! / KMH],
  ['slope.column.skiSpeed', (k, i) => k.skiSpeed[i]! / KMH],
  ['slope.column.radius', (k, i) => k.radius[i]!],
  ['slope.column.edge', (k, i) => k.edge[i]! / DEGREE],
  ['slope.column.lean', (k, i) => k.lean[i]! / DEGREE],
  ['slope.column.load', (k, i) => k.load[i]!],
  ['slope.column.bodyWeights', (k, i) => k.loadBodyWeights[i]!],
  ['slope.column.grip', (k, i) => k.hold[i]! / DEGREE],
  ['slope.column.gripTip', (_, i, ends) => ends.tip[i]! / DEGREE],
  ['slope.column.gripTail', (_, i, ends) => ends.tail[i]! / DEGREE],
  ['slope.column.slip', (k, i) => k.slip[i]! / DEGREE],
  ['slope.column.drop', (k, i) => k.energy.drop[i]!],
  ['slope.column.kinetic', (k, i) => k.energy.kinetic[i]!],
  ['slope.column.friction', (k, i) => k.energy.friction[i]!],
  ['slope.column.drag', (k, i) => k.energy.drag[i]!],
  ['slope.column.scrape', (k, i) => k.energy.scrape[i]!],
  ['slope.column.legs', (k, i) => k.energy.legs[i]!],
  ['slope.column.state', (k, i) => phaseWords(k, i)],
];

const cell = (value: number | string): string | number =>
  typeof value === 'string' ? value : Number.isFinite(value) ? Number(value.toPrecision(7)) : '';

/** Tracks as rows for a file, headings first; metric, whatever the screen shows. */
export function trackRows(tracks: readonly NamedRun[]) {
  const rows: (string | number)[][] = [[t('common.columnPair'), ...COLUMNS.map(([heading]) => t(heading))]];
  for (const { name, track, turn } of tracks) {
    const ends = holdAtEnds(track, turn);
    for (let i = 0; i < track.t.length; i += EVERY) {
      rows.push([name, ...COLUMNS.map(([, read]) => cell(read(track, i, ends)))]);
    }
  }
  return rows;
}
