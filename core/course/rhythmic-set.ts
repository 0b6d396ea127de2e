import { type AcceptedRange, accept } from '../fault/index.ts';
import type { Gate } from './gates.ts';

/**
 * The rhythmic set: gates s apart down the hill and o across, left and right in turn. Two equal arcs from gate
 * to gate, each along the fall line at its gate, meet halfway [derived, plane geometry]. Lengths in m, angles
 * in rad.
 */

const LENGTH: AcceptedRange = { above: 0, quantity: 'distance' };

/** R_set = (s² + o²)/(4 o): the radius whose arcs just fill the set. */
export function setRadius(spacing: number, offset: number): number {
  accept('spacing', spacing, LENGTH);
  accept('offset', offset, LENGTH);
  return (spacing * spacing + offset * offset) / (4 * offset);
}

/** How far each arc turns from the fall line, 2·atan(o/s). */
export function setTurnAngle(spacing: number, offset: number): number {
  accept('spacing', spacing, LENGTH);
  accept('offset', offset, LENGTH);
  return 2 * Math.atan(offset / spacing);
}

/** How a ski of sidecut radius R_sc fits the set by the cosine rule. */
export type SetFit =
  | {
      readonly kind: 'arcs';
      /** acos(R_set/R_sc). */
      readonly edgeAngle: number;
      readonly radius: number;
      readonly turnAngle: number;
    }
  | {
      readonly kind: 'arcs and traverses';
      /** The edge angle of the arcs, as asked. */
      readonly edgeAngle: number;
      readonly radius: number;
      /** From the fall line to the traverse. */
      readonly turnAngle: number;
      /** Length of the straight between two arcs, m. */
      readonly traverse: number;
    };

/**
 * Needed edge angle acos(R_set/R_sc) where the ski's own radius is the larger; where it is smaller, or where
 * `edgeAngle` asks for a tighter turn, shorter arcs joined by straight traverses.
 */
export function fitRhythmicSet(
  spacing: number,
  offset: number,
  sidecutRadius: number,
  edgeAngle = 0,
): SetFit {
  accept('sidecutRadius', sidecutRadius, LENGTH);
  const needed = setRadius(spacing, offset);
  const radius = sidecutRadius * Math.cos(edgeAngle);
  if (radius >= needed) {
    return {
      kind: 'arcs',
      edgeAngle: Math.acos(needed / sidecutRadius),
      radius: needed,
      turnAngle: setTurnAngle(spacing, offset),
    };
  }
  // Half a gate interval: R(1 − cosβ) + t/2 sinβ = o/2 and R sinβ + t/2 cosβ = s/2.
  const a = radius - offset / 2;
  const b = spacing / 2;
  const halfTraverse = Math.sqrt(Math.max(0, a * a + b * b - radius * radius));
  const turnAngle = Math.atan2(b, a) - Math.atan2(halfTraverse, radius);
  return { kind: 'arcs and traverses', edgeAngle, radius, turnAngle, traverse: 2 * halfTraverse };
}

/** The gates themselves, alternately to the right and left of the middle, numbered and coloured in turn. */
export function rhythmicSet(count: number, spacing: number, offset: number, firstDown = spacing): Gate[] {
  accept('spacing', spacing, LENGTH);
  accept('offset', offset, LENGTH);
  accept('count', count, { from: 1, to: 10_000, whole: true });
  return Array.from({ length: count }, (_, index) => {
    const right = index % 2 === 0 ? 1 : -1;
    return {
      label: String(index + 1),
      x: (right * offset) / 2,
      y: firstDown + index * spacing,
      colour: index % 2 === 0 ? 'red' : 'blue',
      turn: right === 1 ? -1 : 1,
    };
  });
}
