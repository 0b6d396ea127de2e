import type { Ski } from '../pair/index.ts';
import { input, type Working } from '../working/index.ts';
import type { EdgeCurve } from './edge-curve.ts';
import { fitParabola } from './parabola.ts';
import type { Sidecut } from './sidecut.ts';
import type { MeasuringUncertainty } from './sidecut-uncertainty.ts';

/** How the readings of an edge measured at many stations come about: fitted or solved, not from three widths. */

type Stations = NonNullable<Ski['widthStations']>;

const GEOMETRY = { key: 'source.planeGeometry' } as const;
const SMOOTHED = { key: 'shape.from.smoothed' } as const;

/** The radius of the parabola of least squares, from sums over the stations. */
export function stationRadius(stations: Stations, cut: Sidecut): Working {
  const n = stations.length;
  const mean = (of: (station: Stations[number]) => number) =>
    stations.reduce((sum, station) => sum + of(station), 0) / n;
  const middle = mean(({ x }) => x);
  const half = mean(({ width }) => width / 2);
  const moment = (name: string, of: string, power: number, unit: string, times?: 'y') =>
    input(
      name,
      name,
      { key: 'shape.moment', values: { of, count: n } },
      mean(({ x, width }) => (x - middle) ** power * (times ? width / 2 - half : 1)),
      unit,
      'widthStations',
    );
  return {
    key: 'shape.radius',
    title: { key: 'shape.title.radius' },
    symbol: 'R',
    formula: '(m_4 - m_2^2 - m_3^2 / m_2) / (2 * (q - m_3 * p / m_2))',
    inputs: [
      moment('m_2', 'x²', 2, 'm^2'),
      moment('m_3', 'x³', 3, 'm^3'),
      moment('m_4', 'x⁴', 4, 'm^4'),
      moment('p', 'x y', 1, 'm^2', 'y'),
      moment('q', 'x² y', 2, 'm^3', 'y'),
    ],
    result: { value: cut.radius, unit: 'm' },
    note: { key: 'shape.note.leastSquares' },
    source: GEOMETRY,
    status: 'derived',
  };
}

/** How well that radius is known. */
export function stationPlusMinus(
  ski: Ski,
  stations: Stations,
  cut: Sidecut,
  { uWidth, uLength }: MeasuringUncertainty,
): Working {
  const { uC } = fitParabola(
    stations.map(({ x }) => x),
    stations.map(({ width }) => width / 2),
    uWidth / 2,
  );
  return {
    key: 'shape.radiusUncertainty',
    title: { key: 'shape.title.plusMinus' },
    symbol: 'u_R',
    formula: 'R * sqrt((2 * u_L / L)^2 + (2 * R * u_c)^2)',
    inputs: [
      input('R', 'R', 'working.sidecutRadius', cut.radius, 'm', 'shape.radius'),
      input('u_L', 'u_L', 'shape.lengthUncertainty', uLength, 'm', { key: 'shape.from.measuring' }),
      input('L', 'L', 'working.contactLength', ski.contactLength, 'm', 'contactLengthMm'),
      input('u_c', 'u_c', 'shape.coefficientError', uC, '1/m', { key: 'shape.from.leastSquares' }),
    ],
    result: { value: cut.radiusUncertainty, unit: 'm' },
    source: { key: 'source.propagationThroughFit' },
    status: 'derived',
  };
}

/**
 * Where the smoothed edge is narrowest, from its slope and curvature at the stations on either side. None where it
 * is narrowest at one of its ends: there its slope is not zero.
 */
export function stationWaist(stations: Stations, cut: Sidecut, edge: EdgeCurve): Working[] {
  const at = cut.waistStation;
  const { length } = edge;
  if (!(at > 0.001 * length && at < 0.999 * length)) return [];
  const behind = Math.max(0, ...stations.map(({ x }) => x).filter(x => x < at));
  const ahead = Math.min(length, ...stations.map(({ x }) => x).filter(x => x >= at));
  // Told from the farther of the two: at the waist itself there is no slope to lose.
  const [from, to] = at - behind > ahead - at ? [behind, ahead] : [ahead, behind];
  return [
    {
      key: 'shape.waistStation',
      title: { key: 'shape.title.waist' },
      symbol: 'x_0',
      formula: '',
      solved: {
        by: { key: 'shape.by.halving' },
        of: { key: 'shape.of.slope' },
        left: 'k_1 * (x_0 - x_1) + (k_2 - k_1) * (x_0 - x_1)^2 / (2 * (x_2 - x_1))',
        right: '-t',
        name: 'x_0',
        unit: '1',
        within: 1e-9,
      },
      inputs: [
        input('x_1', 'x_1', 'shape.stationBeside', from, 'm', 'widthStations'),
        input('x_2', 'x_2', 'shape.stationAcross', to, 'm', 'widthStations'),
        input('t', "y'_1", 'shape.slopeAtFirst', edge.slope(from), '1', SMOOTHED),
        input('k_1', "y''_1", 'shape.curvatureAtFirst', edge.curvature(from), '1/m', SMOOTHED),
        input('k_2', "y''_2", 'shape.curvatureAtSecond', edge.curvature(to), '1/m', SMOOTHED),
      ],
      result: { value: at, unit: 'm' },
      note: { key: 'shape.note.narrowest' },
      source: GEOMETRY,
      status: 'derived',
    },
  ];
}
