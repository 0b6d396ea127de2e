import type { TraceId } from './trace-list.ts';

/** What has been measured on snow, in the unit the trace holds. Context to read a trace against, no more. */
export interface MeasuredBand {
  readonly trace: TraceId;
  readonly low: number;
  readonly high: number;
  readonly label: string;
}

const RAD = Math.PI / 180;

/** Greatest edge angle and least radius of elite slalom turns on 19°, and the load of giant slalom turns. */
export const MEASURED: readonly MeasuredBand[] = [
  { trace: 'edge', low: 64 * RAD, high: 67.4 * RAD, label: 'SL 10 m' },
  { trace: 'edge', low: 69.1 * RAD, high: 72.9 * RAD, label: 'SL 13 m' },
  { trace: 'radius', low: 3.73, high: 4.19, label: 'SL 10 m' },
  { trace: 'radius', low: 4.35, high: 5.53, label: 'SL 13 m' },
  { trace: 'load', low: 0.7, high: 1.5, label: 'GS insoles' },
];

/** Said under the traces while the bands are shown. */
export const MEASURED_WORDS =
  'Context, not a mark to reach: greatest edge angle and least radius in slalom on 19°, gates 10 and 13 m ' +
  'apart (Reid et al., Front. Sports Act. Living 2 (2020) 25; seen); force under both feet in giant slalom ' +
  '(Falda-Buscaiot et al., ISBS 2015; seen).';
