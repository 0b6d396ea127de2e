import type { Ski } from '../pair/index.ts';
import type { Working, WorkingInput } from '../working/index.ts';
import { fitCircle, type Point } from './circle.ts';
import { type EdgeCurve, edgeCurve } from './edge-curve.ts';
import { waistShare } from './parabola.ts';
import { edgePoints, type Sidecut, sidecut } from './sidecut.ts';
import { type MeasuringUncertainty, TAPE_AND_CALIPER } from './sidecut-uncertainty.ts';
import { stationPlusMinus, stationRadius, stationWaist } from './station-working.ts';
import { widthRemark } from './width-remark.ts';

const RULEBOOK =
  'R = L²/(2000 (S + T − 2W)) of the competition equipment specification; control procedure as reported, confirm in its annex';
const GEOMETRY = 'Plane geometry';

/** How each reading of the shape came about, in reading order. */
export function shapeWorkings(ski: Ski, options: Partial<MeasuringUncertainty> = {}): Working[] {
  const uncertainty = { ...TAPE_AND_CALIPER, ...options };
  const cut = sidecut(ski, uncertainty);
  const edge = edgeCurve(ski, uncertainty);
  const three = ski.widthStations === null ? ski : threeWidthsOf(ski, cut, edge);
  return [
    depth(three, cut),
    ...(ski.widthStations === null
      ? [radius(ski, cut), plusMinus(ski, cut, uncertainty)]
      : [stationRadius(ski.widthStations, cut), stationPlusMinus(ski, ski.widthStations, cut, uncertainty)]),
    circle(three, cut),
    ...(Number.isFinite(cut.fittedRadius) ? [fitted(ski, cut, edge)] : []),
    ...(ski.widthStations === null ? [waist(ski, cut)] : stationWaist(ski.widthStations, cut, edge)),
    taper(three, cut),
  ];
}

/** The widths of an edge measured at many stations where the three usual ones would be taken. */
const threeWidthsOf = (ski: Ski, cut: Sidecut, edge: EdgeCurve): Ski => ({
  ...ski,
  tailWidth: 2 * edge.halfWidth(0),
  waistWidth: 2 * edge.halfWidth(cut.waistStation),
  tipWidth: 2 * edge.halfWidth(edge.length),
  waistStation: cut.waistStation,
});

const SMOOTHED = 'the edge smoothed through widthStations';
const field = (ski: Ski, name: string) => (ski.widthStations === null ? name : SMOOTHED);

const S = (ski: Ski) => width('S', 'S', 'tip width', field(ski, 'tipWidthMm'), ski.tipWidth);
const T = (ski: Ski) => width('T', 'T', 'tail width', field(ski, 'tailWidthMm'), ski.tailWidth);
const W = (ski: Ski) => width('W', 'W', 'waist width', field(ski, 'waistWidthMm'), ski.waistWidth);
const L = (ski: Ski) => width('L', 'L', 'contact length', 'contactLengthMm', ski.contactLength);

const share = (ski: Ski): WorkingInput => ({
  name: 's',
  symbol: 's',
  meaning: 'waist station as a share of the contact length',
  from:
    ski.waistStation === null
      ? 'taken midway: no waist station given'
      : field(ski, 'waistFromTailMm / contactLengthMm'),
  value: waistShare(ski),
  unit: '1',
});

function width(name: string, symbol: string, meaning: string, from: string, value: number): WorkingInput {
  return { name, symbol, meaning, from, value, unit: 'm' };
}

function depth(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.depth',
    title: 'Sidecut depth',
    symbol: 'd',
    formula: '(S + T) / 4 - W / 2',
    inputs: [S(ski), T(ski), W(ski)],
    result: { value: cut.depth, unit: 'm' },
    source: 'Half the mean of the end widths less half the waist width',
    status: 'definition',
  };
}

function radius(ski: Ski, cut: Sidecut): Working {
  if (ski.waistStation === null) {
    return {
      key: 'shape.radius',
      title: 'Sidecut radius',
      symbol: 'R',
      formula: 'L^2 / (8 * d)',
      inputs: [L(ski), width('d', 'd', 'sidecut depth', 'shape.depth', cut.depth)],
      result: { value: cut.radius, unit: 'm' },
      note: remarked(
        ski,
        'L is the contact length. The waist is taken midway because no waist station is given.',
      ),
      source: RULEBOOK,
      status: 'seen',
    };
  }
  return {
    key: 'shape.radius',
    title: 'Sidecut radius',
    symbol: 'R',
    formula: 'L^2 * s * (1 - s) / (T + (S - T) * s - W)',
    inputs: [L(ski), share(ski), S(ski), T(ski), W(ski)],
    result: { value: cut.radius, unit: 'm' },
    note: remarked(
      ski,
      'The parabola through the three widths with the waist where it was measured: R = 1/(2c), c its quadratic coefficient. L is the contact length.',
    ),
    source: GEOMETRY,
    status: 'derived',
  };
}

const remarked = (ski: Ski, note: string): string => [note, widthRemark(ski) ?? []].flat().join(' ');

function plusMinus(ski: Ski, cut: Sidecut, { uWidth, uLength }: MeasuringUncertainty): Working {
  return {
    key: 'shape.radiusUncertainty',
    title: 'Measuring uncertainty of the sidecut radius',
    symbol: 'u_R',
    formula: 'R * sqrt((2 * u_L / L)^2 + u_w^2 * (s^2 + (1 - s)^2 + 1) / (T + (S - T) * s - W)^2)',
    inputs: [
      width('R', 'R', 'sidecut radius', 'shape.radius', cut.radius),
      width('u_L', 'u_L', 'uncertainty of the contact length', 'measuring', uLength),
      width('u_w', 'u_w', 'uncertainty of one width', 'measuring', uWidth),
      L(ski),
      share(ski),
      S(ski),
      T(ski),
      W(ski),
    ],
    result: { value: cut.radiusUncertainty, unit: 'm' },
    note: 'One standard uncertainty; independent errors add by their squares.',
    source: 'Propagation of independent uncertainties through the formula of the radius',
    status: 'derived',
  };
}

function circle(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.circleRadius',
    title: 'Exact circle through three edge points',
    symbol: 'R_c',
    formula:
      'sqrt(x_w^2 + h_T^2) * sqrt((L - x_w)^2 + h_S^2) * sqrt(L^2 + (h_S - h_T)^2) / (2 * (h_T * (L - x_w) + h_S * x_w))',
    inputs: [
      width('x_w', 'x_w', 'waist station', share(ski).from as string, waistShare(ski) * ski.contactLength),
      L(ski),
      width(
        'h_S',
        'h_S',
        'tip half width over the waist',
        field(ski, '(tipWidthMm - waistWidthMm) / 2'),
        (ski.tipWidth - ski.waistWidth) / 2,
      ),
      width(
        'h_T',
        'h_T',
        'tail half width over the waist',
        field(ski, '(tailWidthMm - waistWidthMm) / 2'),
        (ski.tailWidth - ski.waistWidth) / 2,
      ),
    ],
    result: { value: cut.circleRadius, unit: 'm' },
    note: 'R = abc/(4A) of the triangle. With equal ends it exceeds L²/(8d) by d/2.',
    source: GEOMETRY,
    status: 'derived',
  };
}

function fitted(ski: Ski, cut: Sidecut, edge: EdgeCurve): Working {
  const points = edgePoints(ski, edge);
  const { radius, centre, bottom } = fitCircle(points, cut.radius);
  const through = ski.widthStations === null ? 'points all along the edge' : 'measured width stations';
  const below = (x: number) => Math.sqrt(radius ** 2 - (x - centre) ** 2);
  const mean = (of: (point: Point) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  return {
    key: 'shape.fittedRadius',
    title: 'Circle of least squares over the edge',
    symbol: 'R_f',
    formula: '',
    solved: {
      by: 'by Gauss–Newton steps for radius, middle and lowest point together',
      of: `the circle’s heights and those of the ${through}, each weighed by 1/z`,
      left: '(R_f + b) * j',
      right: 'p + 1',
      name: 'R_f',
      unit: '1',
      within: 1e-9,
    },
    inputs: [
      width('b', 'b', 'half width at the lowest point of the circle', 'the fit', bottom),
      {
        name: 'j',
        symbol: '\\langle 1/z\\rangle',
        meaning: `mean of 1/z over the ${through}, z how far the circle there lies below its centre`,
        from: 'the fit',
        value: mean(({ x }) => 1 / below(x)),
        unit: '1/m',
      },
      {
        name: 'p',
        symbol: '\\langle y/z\\rangle',
        meaning: `mean of y/z over the ${through}, y the half width`,
        from: field(ski, 'the parabola through the three widths'),
        value: mean(({ x, y }) => y / below(x)),
        unit: '1',
      },
    ],
    result: { value: cut.fittedRadius, unit: 'm' },
    note: `The circle whose heights leave the least sum of squares to the ${through}: no other radius brings it down.`,
    source: GEOMETRY,
    status: 'derived',
  };
}

function waist(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.waistStation',
    title: 'True waist, from the rear contact point',
    symbol: 'x_0',
    formula: 'L / 2 * (1 - (S - T) * s * (1 - s) / (T + (S - T) * s - W))',
    inputs: [L(ski), share(ski), S(ski), T(ski), W(ski)],
    result: { value: cut.waistStation, unit: 'm' },
    note: 'Where the parabola through the three widths is narrowest. With the tip wider than the tail it lies behind the middle of the contact length.',
    source: GEOMETRY,
    status: 'derived',
  };
}

function taper(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.taper',
    title: 'Taper angle',
    symbol: '\\tau',
    formula: 'atan((S - T) / (2 * L))',
    inputs: [S(ski), T(ski), L(ski)],
    result: { value: cut.taper, unit: 'rad' },
    note: 'Angle of the chord of either edge to the midline; positive when the tip is the wider end.',
    source: GEOMETRY,
    status: 'definition',
  };
}
