import type { Ski } from '../pair/index.ts';
import type { Working, WorkingInput } from '../working/index.ts';
import { waistShare } from './parabola.ts';
import { type Sidecut, sidecut, sidecutDepth } from './sidecut.ts';
import { type MeasuringUncertainty, TAPE_AND_CALIPER } from './sidecut-uncertainty.ts';

const RULEBOOK =
  'R = L²/(2000 (S + T − 2W)) of the competition equipment specification; control procedure as reported, confirm in its annex';
const GEOMETRY = 'Plane geometry';

/** How each reading of the shape came about, in reading order. */
export function shapeWorkings(ski: Ski, options: Partial<MeasuringUncertainty> = {}): Working[] {
  const uncertainty = { ...TAPE_AND_CALIPER, ...options };
  const cut = sidecut(ski, uncertainty);
  return ski.widthStations === null
    ? [depth(ski), radius(ski, cut), plusMinus(ski, cut, uncertainty), circle(ski, cut), taper(ski, cut)]
    : [stationRadius(cut), stationPlusMinus(ski, cut, uncertainty)];
}

const S = (ski: Ski) => width('S', 'S', 'tip width', 'tipWidthMm', ski.tipWidth);
const T = (ski: Ski) => width('T', 'T', 'tail width', 'tailWidthMm', ski.tailWidth);
const W = (ski: Ski) => width('W', 'W', 'waist width', 'waistWidthMm', ski.waistWidth);
const L = (ski: Ski) => width('L', 'L', 'contact length', 'contactLengthMm', ski.contactLength);

const share = (ski: Ski): WorkingInput => ({
  name: 's',
  symbol: 's',
  meaning: 'waist station as a share of the contact length',
  from:
    ski.waistStation === null ? 'taken midway: no waist station given' : 'waistFromTailMm / contactLengthMm',
  value: waistShare(ski),
  unit: '1',
});

function width(name: string, symbol: string, meaning: string, from: string, value: number): WorkingInput {
  return { name, symbol, meaning, from, value, unit: 'm' };
}

function depth(ski: Ski): Working {
  return {
    key: 'shape.depth',
    title: 'Sidecut depth',
    symbol: 'd',
    tex: 'd = \\frac{S + T}{4} - \\frac{W}{2}',
    formula: '(S + T) / 4 - W / 2',
    inputs: [S(ski), T(ski), W(ski)],
    result: { value: sidecutDepth(ski), unit: 'm' },
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
      tex: 'R = \\frac{L^2}{8 d}',
      formula: 'L^2 / (8 * d)',
      inputs: [L(ski), width('d', 'd', 'sidecut depth', 'shape.depth', cut.depth)],
      result: { value: cut.radius, unit: 'm' },
      note: 'L is the contact length. The waist is taken midway because no waist station is given.',
      source: RULEBOOK,
      status: 'seen',
    };
  }
  return {
    key: 'shape.radius',
    title: 'Sidecut radius',
    symbol: 'R',
    tex: 'R = \\frac{L^2 s (1 - s)}{T + (S - T) s - W}',
    formula: 'L^2 * s * (1 - s) / (T + (S - T) * s - W)',
    inputs: [L(ski), share(ski), S(ski), T(ski), W(ski)],
    result: { value: cut.radius, unit: 'm' },
    note: 'The parabola through the three widths with the waist where it was measured: R = 1/(2c), c its quadratic coefficient. L is the contact length.',
    source: GEOMETRY,
    status: 'derived',
  };
}

function plusMinus(ski: Ski, cut: Sidecut, { uWidth, uLength }: MeasuringUncertainty): Working {
  return {
    key: 'shape.radiusUncertainty',
    title: 'Measuring uncertainty of the sidecut radius',
    symbol: 'u_R',
    tex: 'u_R = R\\sqrt{\\left(\\frac{2 u_L}{L}\\right)^2 + \\frac{u_w^2\\,(s^2 + (1 - s)^2 + 1)}{(T + (S - T) s - W)^2}}',
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
    tex: 'R_c = \\frac{\\sqrt{x_w^2 + h_T^2}\\,\\sqrt{(L - x_w)^2 + h_S^2}\\,\\sqrt{L^2 + (h_S - h_T)^2}}{2\\,(h_T (L - x_w) + h_S x_w)}',
    formula:
      'sqrt(x_w^2 + h_T^2) * sqrt((L - x_w)^2 + h_S^2) * sqrt(L^2 + (h_S - h_T)^2) / (2 * (h_T * (L - x_w) + h_S * x_w))',
    inputs: [
      width('x_w', 'x_w', 'waist station', share(ski).from as string, waistShare(ski) * ski.contactLength),
      L(ski),
      width(
        'h_S',
        'h_S',
        'tip half width over the waist',
        '(tipWidthMm - waistWidthMm) / 2',
        (ski.tipWidth - ski.waistWidth) / 2,
      ),
      width(
        'h_T',
        'h_T',
        'tail half width over the waist',
        '(tailWidthMm - waistWidthMm) / 2',
        (ski.tailWidth - ski.waistWidth) / 2,
      ),
    ],
    result: { value: cut.circleRadius, unit: 'm' },
    note: 'R = abc/(4A) of the triangle. With equal ends it exceeds L²/(8d) by d/2.',
    source: GEOMETRY,
    status: 'derived',
  };
}

function taper(ski: Ski, cut: Sidecut): Working {
  return {
    key: 'shape.taper',
    title: 'Taper angle',
    symbol: '\\tau',
    tex: '\\tau = \\arctan\\frac{S - T}{2 L}',
    formula: 'atan((S - T) / (2 * L))',
    inputs: [S(ski), T(ski), L(ski)],
    result: { value: cut.taper, unit: 'rad' },
    note: 'Angle of the chord of either edge to the midline; positive when the tip is the wider end.',
    source: GEOMETRY,
    status: 'definition',
  };
}

function stationRadius(cut: Sidecut): Working {
  return {
    key: 'shape.radius',
    title: 'Sidecut radius',
    symbol: 'R',
    tex: 'R = \\frac{1}{2 c}',
    formula: '1 / (2 * c)',
    inputs: [
      {
        name: 'c',
        symbol: 'c',
        meaning: 'quadratic coefficient of the parabola of least squares through the half widths',
        from: 'widthStations',
        value: 1 / (2 * cut.radius),
        unit: '1/m',
      },
    ],
    result: { value: cut.radius, unit: 'm' },
    note: 'All measured width stations count alike.',
    source: GEOMETRY,
    status: 'derived',
  };
}

function stationPlusMinus(ski: Ski, cut: Sidecut, { uLength }: MeasuringUncertainty): Working {
  const along = (2 * uLength) / ski.contactLength;
  const across = Math.sqrt((cut.radiusUncertainty / cut.radius) ** 2 - along ** 2);
  return {
    key: 'shape.radiusUncertainty',
    title: 'Measuring uncertainty of the sidecut radius',
    symbol: 'u_R',
    tex: 'u_R = R\\sqrt{\\left(\\frac{2 u_L}{L}\\right)^2 + q^2}',
    formula: 'R * sqrt((2 * u_L / L)^2 + q^2)',
    inputs: [
      width('R', 'R', 'sidecut radius', 'shape.radius', cut.radius),
      width('u_L', 'u_L', 'uncertainty of the contact length', 'measuring', uLength),
      L(ski),
      {
        name: 'q',
        symbol: 'q',
        meaning: 'relative standard error of the quadratic coefficient',
        from: 'least squares through widthStations',
        value: across,
        unit: '1',
      },
    ],
    result: { value: cut.radiusUncertainty, unit: 'm' },
    source: 'Propagation of independent uncertainties through the fit',
    status: 'derived',
  };
}
