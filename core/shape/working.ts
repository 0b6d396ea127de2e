import type { PlainKey, Sentence } from '../language/index.ts';
import type { Ski } from '../pair/index.ts';
import { input, type Working, type WorkingInput } from '../working/index.ts';
import { fitCircle, type Point } from './circle.ts';
import { type EdgeCurve, edgeCurve } from './edge-curve.ts';
import { waistShare } from './parabola.ts';
import { edgePoints, type Sidecut, sidecut } from './sidecut.ts';
import { type MeasuringUncertainty, TAPE_AND_CALIPER } from './sidecut-uncertainty.ts';
import { stationPlusMinus, stationRadius, stationWaist } from './station-working.ts';
import { widthRemark } from './width-remark.ts';

const RULEBOOK = { key: 'source.rulebook' } as const;
const GEOMETRY = { key: 'source.planeGeometry' } as const;

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

const SMOOTHED = { key: 'shape.from.smoothed' } as const;
const field = (ski: Ski, name: string): string | Sentence => (ski.widthStations === null ? name : SMOOTHED);

const S = (ski: Ski) => width('S', 'S', 'working.tipWidth', field(ski, 'tipWidthMm'), ski.tipWidth);
const T = (ski: Ski) => width('T', 'T', 'working.tailWidth', field(ski, 'tailWidthMm'), ski.tailWidth);
const W = (ski: Ski) => width('W', 'W', 'working.waistWidth', field(ski, 'waistWidthMm'), ski.waistWidth);
const L = (ski: Ski) => width('L', 'L', 'working.contactLength', 'contactLengthMm', ski.contactLength);

const share = (ski: Ski): WorkingInput =>
  input(
    's',
    's',
    'shape.waistShare',
    waistShare(ski),
    '1',
    ski.waistStation === null
      ? { key: 'shape.from.midway' }
      : field(ski, 'waistFromTailMm / contactLengthMm'),
  );

function width(
  name: string,
  symbol: string,
  meaning: PlainKey,
  from: WorkingInput['from'],
  value: number,
): WorkingInput {
  return input(name, symbol, meaning, value, 'm', from);
}

function depth(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.depth',
    title: { key: 'shape.title.depth' },
    symbol: 'd',
    formula: '(S + T) / 4 - W / 2',
    inputs: [S(ski), T(ski), W(ski)],
    result: { value: cut.depth, unit: 'm' },
    source: { key: 'source.endWidths' },
    status: 'definition',
  };
}

function radius(ski: Ski, cut: Sidecut): Working {
  if (ski.waistStation === null) {
    return {
      key: 'shape.radius',
      title: { key: 'shape.title.radius' },
      symbol: 'R',
      formula: 'L^2 / (8 * d)',
      inputs: [L(ski), width('d', 'd', 'working.sidecutDepth', 'shape.depth', cut.depth)],
      result: { value: cut.radius, unit: 'm' },
      note: remarked(ski, 'shape.note.midway'),
      source: RULEBOOK,
      status: 'seen',
    };
  }
  return {
    key: 'shape.radius',
    title: { key: 'shape.title.radius' },
    symbol: 'R',
    formula: 'L^2 * s * (1 - s) / (T + (S - T) * s - W)',
    inputs: [L(ski), share(ski), S(ski), T(ski), W(ski)],
    result: { value: cut.radius, unit: 'm' },
    note: remarked(ski, 'shape.note.parabola'),
    source: GEOMETRY,
    status: 'derived',
  };
}

const remarked = (ski: Ski, note: PlainKey): Sentence[] => [{ key: note }, widthRemark(ski) ?? []].flat();

function plusMinus(ski: Ski, cut: Sidecut, { uWidth, uLength }: MeasuringUncertainty): Working {
  return {
    key: 'shape.radiusUncertainty',
    title: { key: 'shape.title.plusMinus' },
    symbol: 'u_R',
    formula: 'R * sqrt((2 * u_L / L)^2 + u_w^2 * (s^2 + (1 - s)^2 + 1) / (T + (S - T) * s - W)^2)',
    inputs: [
      width('R', 'R', 'working.sidecutRadius', 'shape.radius', cut.radius),
      width('u_L', 'u_L', 'shape.lengthUncertainty', { key: 'shape.from.measuring' }, uLength),
      width('u_w', 'u_w', 'shape.widthUncertainty', { key: 'shape.from.measuring' }, uWidth),
      L(ski),
      share(ski),
      S(ski),
      T(ski),
      W(ski),
    ],
    result: { value: cut.radiusUncertainty, unit: 'm' },
    note: { key: 'shape.note.plusMinus' },
    source: { key: 'source.propagation' },
    status: 'derived',
  };
}

function circle(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.circleRadius',
    title: { key: 'shape.title.circle' },
    symbol: 'R_c',
    formula:
      'sqrt(x_w^2 + h_T^2) * sqrt((L - x_w)^2 + h_S^2) * sqrt(L^2 + (h_S - h_T)^2) / (2 * (h_T * (L - x_w) + h_S * x_w))',
    inputs: [
      width('x_w', 'x_w', 'working.waistStation', share(ski).from, waistShare(ski) * ski.contactLength),
      L(ski),
      width(
        'h_S',
        'h_S',
        'shape.tipOverWaist',
        field(ski, '(tipWidthMm - waistWidthMm) / 2'),
        (ski.tipWidth - ski.waistWidth) / 2,
      ),
      width(
        'h_T',
        'h_T',
        'shape.tailOverWaist',
        field(ski, '(tailWidthMm - waistWidthMm) / 2'),
        (ski.tailWidth - ski.waistWidth) / 2,
      ),
    ],
    result: { value: cut.circleRadius, unit: 'm' },
    note: { key: 'shape.note.circle' },
    source: GEOMETRY,
    status: 'derived',
  };
}

function fitted(ski: Ski, cut: Sidecut, edge: EdgeCurve): Working {
  const points = edgePoints(ski, edge);
  const { radius, centre, bottom } = fitCircle(points, cut.radius);
  const over = ski.widthStations === null ? 'edge' : 'stations';
  const below = (x: number) => Math.sqrt(radius ** 2 - (x - centre) ** 2);
  const mean = (of: (point: Point) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  return {
    key: 'shape.fittedRadius',
    title: { key: 'shape.title.fitted' },
    symbol: 'R_f',
    formula: '',
    solved: {
      by: { key: 'shape.by.gaussNewton' },
      of: { key: 'shape.of.heights', values: { over } },
      left: '(R_f + b) * j',
      right: 'p + 1',
      name: 'R_f',
      unit: '1',
      within: 1e-9,
    },
    inputs: [
      width('b', 'b', 'shape.circleBottom', { key: 'shape.from.fit' }, bottom),
      input(
        'j',
        '\\langle 1/z\\rangle',
        { key: 'shape.meanInverse', values: { over } },
        mean(({ x }) => 1 / below(x)),
        '1/m',
        { key: 'shape.from.fit' },
      ),
      input(
        'p',
        '\\langle y/z\\rangle',
        { key: 'shape.meanHeight', values: { over } },
        mean(({ x, y }) => y / below(x)),
        '1',
        ski.widthStations === null ? { key: 'shape.from.parabola' } : SMOOTHED,
      ),
    ],
    result: { value: cut.fittedRadius, unit: 'm' },
    note: { key: 'shape.note.fitted', values: { over } },
    source: GEOMETRY,
    status: 'derived',
  };
}

function waist(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.waistStation',
    title: { key: 'shape.title.waist' },
    symbol: 'x_0',
    formula: 'L / 2 * (1 - (S - T) * s * (1 - s) / (T + (S - T) * s - W))',
    inputs: [L(ski), share(ski), S(ski), T(ski), W(ski)],
    result: { value: cut.waistStation, unit: 'm' },
    note: { key: 'shape.note.waist' },
    source: GEOMETRY,
    status: 'derived',
  };
}

function taper(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.taper',
    title: { key: 'shape.title.taper' },
    symbol: '\\tau',
    formula: 'atan((S - T) / (2 * L))',
    inputs: [S(ski), T(ski), L(ski)],
    result: { value: cut.taper, unit: 'rad' },
    note: { key: 'shape.note.taper' },
    source: GEOMETRY,
    status: 'definition',
  };
}
