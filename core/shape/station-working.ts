import type { Ski } from '../pair/index.ts';
import type { Working, WorkingInput } from '../working/index.ts';
import type { EdgeCurve } from './edge-curve.ts';
import { fitParabola } from './parabola.ts';
import type { Sidecut } from './sidecut.ts';
import type { MeasuringUncertainty } from './sidecut-uncertainty.ts';

/** How the readings of an edge measured at many stations come about: fitted or solved, not from three widths. */

type Stations = NonNullable<Ski['widthStations']>;

const GEOMETRY = 'Plane geometry';
const SMOOTHED = 'the edge smoothed through widthStations';

const input = (
  name: string,
  symbol: string,
  meaning: string,
  from: string,
  value: number,
  unit: string,
): WorkingInput => ({ name, symbol, meaning, from, value, unit });

/** The radius of the parabola of least squares, from sums over the stations. */
export function stationRadius(stations: Stations, cut: Sidecut): Working {
  const n = stations.length;
  const mean = (of: (station: Stations[number]) => number) =>
    stations.reduce((sum, station) => sum + of(station), 0) / n;
  const middle = mean(({ x }) => x);
  const half = mean(({ width }) => width / 2);
  const moment = (name: string, symbol: string, of: string, power: number, unit: string, times?: 'y') =>
    input(
      name,
      symbol,
      `mean of ${of} over the ${n} stations, about their mean`,
      'widthStations',
      mean(({ x, width }) => (x - middle) ** power * (times ? width / 2 - half : 1)),
      unit,
    );
  return {
    key: 'shape.radius',
    title: 'Sidecut radius',
    symbol: 'R',
    formula: '(m_4 - m_2^2 - m_3^2 / m_2) / (2 * (q - m_3 * p / m_2))',
    inputs: [
      moment('m_2', 'm_2', 'x² (x along the ski)', 2, 'm^2'),
      moment('m_3', 'm_3', 'x³', 3, 'm^3'),
      moment('m_4', 'm_4', 'x⁴', 4, 'm^4'),
      moment('p', 'p', 'x y (y the half width)', 1, 'm^2', 'y'),
      moment('q', 'q', 'x² y', 2, 'm^3', 'y'),
    ],
    result: { value: cut.radius, unit: 'm' },
    note: 'The parabola of least squares through the half widths: R = 1/(2c), c its quadratic coefficient. All measured width stations count alike.',
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
    title: 'Measuring uncertainty of the sidecut radius',
    symbol: 'u_R',
    formula: 'R * sqrt((2 * u_L / L)^2 + (2 * R * u_c)^2)',
    inputs: [
      input('R', 'R', 'sidecut radius', 'shape.radius', cut.radius, 'm'),
      input('u_L', 'u_L', 'uncertainty of the contact length', 'measuring', uLength, 'm'),
      input('L', 'L', 'contact length', 'contactLengthMm', ski.contactLength, 'm'),
      input(
        'u_c',
        'u_c',
        'standard error of the quadratic coefficient c = 1/(2R)',
        'least squares through widthStations',
        uC,
        '1/m',
      ),
    ],
    result: { value: cut.radiusUncertainty, unit: 'm' },
    source: 'Propagation of independent uncertainties through the fit',
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
      title: 'True waist, from the rear contact point',
      symbol: 'x_0',
      formula: '',
      solved: {
        by: 'by halving',
        of: 'the slope the edge gains from the station to its waist and the slope it has there',
        left: 'k_1 * (x_0 - x_1) + (k_2 - k_1) * (x_0 - x_1)^2 / (2 * (x_2 - x_1))',
        right: '-t',
        name: 'x_0',
        unit: '1',
        within: 1e-9,
      },
      inputs: [
        input('x_1', 'x_1', 'a station beside the waist', 'widthStations', from, 'm'),
        input('x_2', 'x_2', 'the station on its other side', 'widthStations', to, 'm'),
        input('t', "y'_1", 'slope of the edge at the first', SMOOTHED, edge.slope(from), '1'),
        input('k_1', "y''_1", 'curvature of the edge at the first', SMOOTHED, edge.curvature(from), '1/m'),
        input('k_2', "y''_2", 'curvature of the edge at the second', SMOOTHED, edge.curvature(to), '1/m'),
      ],
      result: { value: at, unit: 'm' },
      note: 'The edge is narrowest where its slope is zero; its curvature runs straight from station to station.',
      source: GEOMETRY,
      status: 'derived',
    },
  ];
}
