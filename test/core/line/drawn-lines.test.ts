// @module-tag slow
/**
 * Lines drawn with arcs and clothoids through the first gates of the demo sets, by an earlier way of this program that
 * knew no skier with height, kept as points: ridden by the same skier they are never quicker than the quickest run.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cosineTurnSurface } from '../../../core/carve/index.ts';
import { quickestRun, type SetQuestion } from '../../../core/line/index.ts';
import { conditionsOf, GIANT, SLALOM } from './questions.ts';

type Drawn = { readonly gates: [x: number, y: number][]; readonly line: [x: number, y: number][] };
const drawn: Record<'slalom' | 'giantSlalom', Drawn> = JSON.parse(
  readFileSync(new URL('drawn-lines.json', import.meta.url), 'utf8'),
);

test.each([
  ['slalom', 12.5, 8, { ...SLALOM, slopeDeg: 20 }],
  ['giantSlalom', 30, 14, { ...GIANT, slopeDeg: 16.5 }],
] as const)(
  '%s: the drawn line, kept to within half a metre, is slower',
  (which, radius, startSpeed, trial) => {
    const { gates, line } = drawn[which];
    const question: SetQuestion = {
      conditions: { ...conditionsOf(trial), ski: cosineTurnSurface(radius) },
      poles: gates.map(([x, y]) => ({ x, y, turn: x > 0 ? -1 : 1 })),
      startSpeed,
    };
    const free = quickestRun(question, { stages: 12 });
    if (!free.ok) throw new Error(JSON.stringify(free));
    const points = line.map(([x, y]) => ({ x, y }));
    const ridden = quickestRun({ ...question, along: { points, within: 0.5 } }, { stages: 12, from: [free] });
    if (!ridden.ok) throw new Error(JSON.stringify(ridden));
    const { x, y } = ridden.run;
    const [first, last] = [ridden.poleNodes[0]!, ridden.poleNodes.at(-1)!];
    for (let k = first; k <= last; k++) {
      // The points stand half a metre apart.
      const away = Math.min(...points.map(point => Math.hypot(point.x - x[k]!, point.y - y[k]!)));
      expect(away).toBeLessThan(0.5 + 0.3);
    }
    expect(ridden.seconds).toBeGreaterThan(free.seconds);
  },
);
