import type { Ski } from '../pair/index.ts';
import { circleThrough, fitCircle, type Point } from './circle.ts';
import { type EdgeCurve, edgeCurve, localRadius, narrowestStation } from './edge-curve.ts';
import { fitParabola, threeWidthParabola, waistShare } from './parabola.ts';
import { type MeasuringUncertainty, TAPE_AND_CALIPER, threeWidthUncertainty } from './sidecut-uncertainty.ts';

/** What radius is cut into the ski, and how well it is known. SI. */
export interface Sidecut {
  /** Mean of the end half widths less the waist half width, (S + T)/4 − W/2, m. */
  readonly depth: number;
  /** The sidecut radius, small-sagitta form, m. */
  readonly radius: number;
  /** Standard uncertainty of the radius, m. */
  readonly radiusUncertainty: number;
  /** Exact circle through both end points and the waist point of the edge, m. */
  readonly circleRadius: number;
  /** Circle of least squares over the whole edge, m. */
  readonly fittedRadius: number;
  /** Angle of either edge's chord to the midline, positive when the tip is the wider end, rad. */
  readonly taper: number;
  /** Station of the least width, m from the rear contact point. */
  readonly waistStation: number;
  readonly widthSource: 'three widths' | 'width stations';
  readonly waistSource: 'waist taken midway' | 'measured waist station' | 'width stations';
  readonly lengthSource: 'contact length';
  /** Local radius along the edge, m; Infinity where it is straight. */
  readonly local: readonly { readonly x: number; readonly radius: number }[];
}

const SAMPLES = 101;

/** The sidecut of a ski whose widths have been checked (the waist is the narrowest). */
export function sidecut(ski: Ski, options: Partial<MeasuringUncertainty> = {}): Sidecut {
  const uncertainty = { ...TAPE_AND_CALIPER, ...options };
  const edge = edgeCurve(ski, uncertainty);
  const length = ski.contactLength;
  const waistStation = narrowestStation(edge);
  const shared = {
    taper: taperAngle(edge),
    waistStation,
    lengthSource: 'contact length',
    local: samples(edge).map(({ x }) => ({ x, radius: localRadius(edge, x) })),
  } as const;
  if (ski.widthStations === null) {
    const radius = 1 / (2 * threeWidthParabola(ski).c);
    const share = waistShare(ski);
    return {
      ...shared,
      depth: sidecutDepth(ski),
      radius,
      radiusUncertainty: threeWidthUncertainty(radius, length, share, uncertainty),
      circleRadius: circleThrough(
        { x: 0, y: ski.tailWidth / 2 },
        { x: share * length, y: ski.waistWidth / 2 },
        { x: length, y: ski.tipWidth / 2 },
      ),
      fittedRadius: fitCircle(samples(edge), radius).radius,
      widthSource: 'three widths',
      waistSource: ski.waistStation === null ? 'waist taken midway' : 'measured waist station',
    };
  }
  const points = edgePoints(ski, edge);
  const { parabola, uC } = fitParabola(
    points.map(point => point.x),
    points.map(point => point.y),
    uncertainty.uWidth / 2,
  );
  const radius = 1 / (2 * parabola.c);
  const ends = [edge.halfWidth(0), edge.halfWidth(length)];
  return {
    ...shared,
    depth: (ends[0] + ends[1]) / 2 - edge.halfWidth(waistStation),
    radius,
    radiusUncertainty: Math.abs(radius) * Math.hypot((2 * uncertainty.uLength) / length, uC / parabola.c),
    circleRadius: circleThrough(
      { x: 0, y: ends[0] },
      { x: waistStation, y: edge.halfWidth(waistStation) },
      { x: length, y: ends[1] },
    ),
    fittedRadius: fitCircle(points, radius).radius,
    widthSource: 'width stations',
    waistSource: 'width stations',
  };
}

/** d = (S + T)/4 − W/2 from the three full widths, m. */
function sidecutDepth(ski: Ski): number {
  return (ski.tipWidth + ski.tailWidth) / 4 - ski.waistWidth / 2;
}

function taperAngle(edge: EdgeCurve): number {
  return Math.atan((edge.halfWidth(edge.length) - edge.halfWidth(0)) / edge.length);
}

/** The points of the edge that a circle is fitted to: as measured, or all along it. */
export function edgePoints(ski: Ski, edge: EdgeCurve): Point[] {
  return ski.widthStations?.map(({ x, width }) => ({ x, y: width / 2 })) ?? samples(edge);
}

function samples(edge: EdgeCurve): Point[] {
  return Array.from({ length: SAMPLES }, (_, i) => {
    const x = (i / (SAMPLES - 1)) * edge.length;
    return { x, y: edge.halfWidth(x) };
  });
}
