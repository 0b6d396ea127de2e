import { FieldError } from '../fault/index.ts';
import type { Value } from '../language/index.ts';
import { monotoneCubic } from '../numeric/index.ts';
import type { Layup, LayupLayer, SideStrip } from '../pair/index.ts';
import type { Profile } from './profile.ts';

/** A rectangle of the cross-section: `width` in all, from `low` to `high` over the base, m. */
export interface Piece {
  /** The layer's own, or that of edges and sidewalls by key. */
  readonly name: Value;
  readonly width: number;
  readonly low: number;
  readonly high: number;
  readonly youngs: number;
  readonly shear: number;
  readonly density: number;
}

const piece = (name: Value, width: number, low: number, high: number, of: SideStrip | LayupLayer): Piece => ({
  name,
  width,
  low,
  high,
  youngs: of.youngs,
  shear: of.shear,
  density: of.density,
});

/**
 * The cross-section at `x` (m from the rear contact point) as rectangles, base first. Sides take the place of
 * the layers beside them: at every height a layer is as wide as its share of the ski, or as the sides leave.
 *
 * @throws FieldError where the sides leave no width between them
 */
export function layupPieces(layup: Layup, width: Profile): (x: number) => Piece[] {
  const { layers, edges, sidewalls } = layup;
  const thicknessOf = layers.map(({ thickness }) => {
    if (typeof thickness === 'number') return () => thickness;
    return monotoneCubic(
      thickness.map(station => station.x),
      thickness.map(station => station.thickness),
    );
  });
  return x => {
    const w = width(x);
    const thick = thicknessOf.map(at => at(x));
    const top = thick.reduce((sum, t) => sum + t, 0);
    const edgeTop = edges ? Math.min(edges.height, top) : 0;
    const between = (side: SideStrip | undefined, of: string) => {
      const left = w - 2 * (side?.width ?? 0);
      if (left > 0) return left;
      throw new FieldError({
        field: `${of}.widthMm`,
        found: side!.width * 1e3,
        accepted: { below: w * 500, unit: 'mm' },
      });
    };
    const low = between(edges, 'edges');
    const high = between(sidewalls, 'sidewalls');
    const pieces: Piece[] = [];
    let bottom = 0;
    layers.forEach((layer, at) => {
      const end = bottom + thick[at];
      const share = w * layer.widthShare;
      // A layer that reaches past the steel edge is cut at its top.
      const cut = Math.min(end, Math.max(bottom, edgeTop));
      if (cut > bottom) pieces.push(piece(layer.material, Math.min(share, low), bottom, cut, layer));
      if (end > cut) pieces.push(piece(layer.material, Math.min(share, high), cut, end, layer));
      bottom = end;
    });
    if (edges) pieces.push(piece({ key: 'flex.bothEdges' }, 2 * edges.width, 0, edgeTop, edges));
    if (sidewalls && top > edgeTop)
      pieces.push(piece({ key: 'flex.bothSidewalls' }, 2 * sidewalls.width, edgeTop, top, sidewalls));
    return pieces;
  };
}
