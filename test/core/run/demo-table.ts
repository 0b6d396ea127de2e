import type { RadiusTable } from '../../../core/carve/index.ts';

/** A made-up table: the cosine rule, tightened a little by load; a stand-in for a solved one. */
export function demoTable(sidecut = 13): RadiusTable {
  const edgeAngles = Float64Array.from({ length: 15 }, (_, i) => ((2 + 5 * i) * Math.PI) / 180);
  const loads = Float64Array.from([200, 400, 800, 1600, 3200]);
  const cells = [...edgeAngles].flatMap(a => [...loads].map(f => [a, f] as const));
  return {
    edgeAngles,
    loads,
    radii: Float64Array.from(cells, ([a, f]) => demoRadius(sidecut, a, f)),
    twistTips: Float64Array.from(cells, ([a, f]) => 2e-5 * f * Math.cos(a)),
    twistTails: Float64Array.from(cells, ([a, f]) => 1.5e-5 * f * Math.cos(a)),
    wallAreas: Float64Array.from(cells, ([a, f]) => Math.sqrt((2.8 * f * Math.tan(a)) / 1e9)),
    hardness: 1e9,
  };
}

export function demoRadius(sidecut: number, edgeAngle: number, load: number): number {
  return sidecut * Math.cos(edgeAngle) * (1 - 0.03 * Math.log2(load / 800));
}
