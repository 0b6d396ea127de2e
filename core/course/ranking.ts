import { FieldError } from '../fault/index.ts';
import type { Sentence } from '../language/index.ts';
import { GRAVITY, type TurnRadius } from '../run/index.ts';
import { DEGREE, KMH } from '../units/index.ts';
import type { CoursePair } from './edge-choice.ts';
import { type CourseConditions, fillCourseConditions } from './gate-conditions.ts';
import { type GateReport, gateReport } from './gate-report.ts';
import type { Gate } from './gates.ts';
import { gateTurns, type Line, type LineOptions, lineThroughGates } from './line.ts';

export interface RankedPair {
  readonly name: string;
  /** Position among the pairs as given. */
  readonly index: number;
  readonly report: GateReport;
  /** Greatest edge angle any gate needs, rad; null where one needs more than there is. */
  readonly neededEdge: number | null;
  /** Least hold at any gate, rad. */
  readonly minHold: number;
  readonly gatesCarved: number;
  readonly gatesTight: number;
  readonly gatesDrifted: number;
  /** Time down the set with the time drifting costs, s: what the pairs are ranked by. */
  readonly cost: number;
  readonly verdict: Sentence;
}

/** A small change to what was put in, and which pair would then come first. */
export interface Flip {
  readonly change: Sentence;
  readonly pick: string;
}

export interface Ranking {
  /** Best first. */
  readonly pairs: readonly RankedPair[];
  readonly pick: string;
  readonly because: readonly Sentence[];
  readonly sure: 'clear' | 'close' | 'only one pair';
  readonly flips: readonly Flip[];
  readonly line: Line;
}

/** Pairs near enough to the first for a small change to matter are looked at again. */
const contenders = 6;
/** Costs are compared in hundredths of a second, as they are timed. */
const hundredths = (entry: RankedPair): number => Math.round(entry.cost * 100);
const angle = (value: number) => ({ quantity: 'angle', value, decimals: 0 }) as const;
const seconds = (value: number) => ({ quantity: 'time', value, decimals: 2 }) as const;

/**
 * Ranks pairs on a set. The line is drawn once; each pair is run down it. Drifting costs time: in a free run
 * through the speed it takes, at a held speed by the time gravity needs to give the lost work back. Pairs level
 * on time are told apart by how many gates they carve on the line itself, then by the edge angle they need.
 * `onProgress` is told the share of pairs run down, 0 to 1.
 */
export function rankPairs(
  pairs: readonly CoursePair[],
  gates: readonly Gate[],
  given: Partial<CourseConditions> = {},
  options: LineOptions = {},
  onProgress?: (share: number) => void,
): Ranking {
  if (pairs.length === 0) {
    throw new FieldError({ field: 'pairs', found: undefined, accepted: { key: 'course.onePair' } });
  }
  const conditions = fillCourseConditions(given);
  const line = lineThroughGates(gates, options);
  const ranked = rankOn(pairs, line, gates, conditions, onProgress);
  const flips = pairs.length > 1 ? findFlips(pairs, ranked, gates, conditions, options, line) : [];
  const [best, second] = ranked;
  return {
    pairs: ranked,
    pick: best.name,
    because: reason(best, second, flips, conditions.holdSpeed),
    sure: pairs.length === 1 ? 'only one pair' : flips.length === 0 ? 'clear' : 'close',
    flips,
    line,
  };
}

function rankOn(
  pairs: readonly CoursePair[],
  line: Line,
  gates: readonly Gate[],
  conditions: CourseConditions,
  onProgress?: (share: number) => void,
): RankedPair[] {
  return pairs
    .map((pair, index) => {
      const entry = summarise(index, gateReport(pair, line, gates, conditions), conditions);
      onProgress?.((index + 1) / pairs.length);
      return entry;
    })
    .sort(
      (a, b) =>
        hundredths(a) - hundredths(b) ||
        b.gatesCarved - a.gatesCarved ||
        peakEdge(a) - peakEdge(b) ||
        a.index - b.index,
    );
}

function summarise(index: number, report: GateReport, conditions: CourseConditions): RankedPair {
  let neededEdge: number | null = 0;
  let minHold = Number.POSITIVE_INFINITY;
  const count = { carves: 0, 'tight arcs': 0, drifts: 0 };
  for (const gate of report.gates) {
    count[gate.mode]++;
    minHold = Math.min(minHold, gate.hold);
    neededEdge =
      neededEdge === null || gate.neededEdge === null ? null : Math.max(neededEdge, gate.neededEdge);
  }
  const givingBack =
    conditions.mass * GRAVITY * Math.max(Math.sin(conditions.slope), 0.02) * report.averageSpeed;
  return {
    name: report.name,
    index,
    report,
    neededEdge,
    minHold,
    gatesCarved: count.carves,
    gatesTight: count['tight arcs'],
    gatesDrifted: count.drifts,
    cost: report.seconds + (conditions.holdSpeed ? report.driftWork / givingBack : 0),
    verdict: verdictOf(report, neededEdge, count, conditions),
  };
}

function verdictOf(
  report: GateReport,
  neededEdge: number | null,
  count: Record<'carves' | 'tight arcs' | 'drifts', number>,
  conditions: CourseConditions,
): Sentence {
  const all = report.gates.length;
  const of = (n: number): Sentence =>
    n === all ? { key: 'course.allGates', values: { all } } : { key: 'course.someGates', values: { n, all } };
  if (count.drifts > 0) {
    const at = { gates: of(count.drifts), limit: angle(conditions.greatestEdge) };
    if (neededEdge === null) return { key: 'course.driftsBeyondAnyEdge', values: at };
    return neededEdge > conditions.greatestEdge
      ? { key: 'course.driftsBeyondEdge', values: { ...at, edge: angle(neededEdge) } }
      : { key: 'course.driftsAtSpeed', values: at };
  }
  return count['tight arcs'] > 0
    ? { key: 'course.holdsTight', values: { gates: of(count['tight arcs']) } }
    : { key: 'course.carves', values: { gates: of(all) } };
}

const peakEdge = (pair: RankedPair): number => Math.max(...pair.report.gates.map(gate => gate.edge));

function reason(
  best: RankedPair,
  second: RankedPair | undefined,
  flips: readonly Flip[],
  speedHeld: boolean,
): Sentence[] {
  const { name, verdict } = best;
  const first: Sentence = { key: 'course.pairVerdict', values: { name, verdict } };
  if (!second) return [first];
  const [flip] = flips;
  return [
    first,
    ...against(best, second, speedHeld),
    flip
      ? { key: 'course.close', values: { change: flip.change, pick: flip.pick } }
      : { key: 'course.noFlip' },
  ];
}

/** What sets the best apart from the next. */
function against(best: RankedPair, second: RankedPair, speedHeld: boolean): Sentence[] {
  const gap = (hundredths(second) - hundredths(best)) / 100;
  const next = { name: second.name, verdict: second.verdict };
  if (gap > 0 && !speedHeld) return [{ key: 'course.ahead', values: { gap: seconds(gap), ...next } }];
  if (gap > 0) {
    return [
      { key: 'course.pairVerdict', values: next },
      gap < best.report.seconds / 2
        ? { key: 'course.keepingSpeed', values: { gap: seconds(gap) } }
        : { key: 'course.cannotKeepSpeed' },
    ];
  }
  if (best.gatesCarved !== second.gatesCarved) return [{ key: 'course.levelBut', values: next }];
  const [edge, other] = [peakEdge(best), peakEdge(second)];
  return Math.round(edge / DEGREE) === Math.round(other / DEGREE)
    ? [{ key: 'course.level', values: { name: second.name } }]
    : [
        {
          key: 'course.lessEdge',
          values: { name: second.name, best: best.name, edge: angle(edge), other: angle(other) },
        },
      ];
}

function findFlips(
  pairs: readonly CoursePair[],
  ranked: readonly RankedPair[],
  gates: readonly Gate[],
  conditions: CourseConditions,
  options: LineOptions,
  line: Line,
): Flip[] {
  const near = ranked.slice(0, contenders).map(entry => pairs[entry.index]);
  const pick = near[0];
  const flips: Flip[] = [];
  const consider = (
    change: Sentence,
    field: readonly CoursePair[],
    drawn: Line,
    set: readonly Gate[],
    c: CourseConditions,
  ): void => {
    // Two pairs may bear one name, so the pick is known by its place among the contenders.
    const first = rankOn(field, drawn, set, c)[0];
    if (first.index !== 0) flips.push({ change, pick: first.name });
  };
  for (const sign of [1, -1]) {
    const way = sign > 0 ? 'more' : 'less';
    const by = { quantity: 'distance', value: 0.3 } as const;
    const moved = offsetGates(gates, sign * by.value);
    const redrawn = tryLine(moved, options);
    if (redrawn)
      consider({ key: 'course.gatesMoved', values: { by, way } }, near, redrawn, moved, conditions);
    const startSpeed = conditions.startSpeed + sign * 5 * KMH;
    if (startSpeed > 0) {
      const values = { by: { quantity: 'speed', value: 5 * KMH, decimals: 0 }, way } as const;
      consider({ key: 'course.speedChanged', values }, near, line, gates, { ...conditions, startSpeed });
    }
    const changed = near.map((pair, i) => (i === 0 ? withRadius(pair, sign * 0.3, conditions) : pair));
    consider(
      { key: 'course.radiusChanged', values: { by, way, name: pick.name } },
      changed,
      line,
      gates,
      conditions,
    );
    const other = near.map((pair, i) => (i === 1 ? withRadius(pair, sign * 0.3, conditions) : pair));
    consider(
      { key: 'course.radiusChanged', values: { by, way, name: near[1].name } },
      other,
      line,
      gates,
      conditions,
    );
  }
  return flips;
}

/** Every gate moved away from the middle of the set by `by` metres; right-turn gates stand on the left. */
function offsetGates(gates: readonly Gate[], by: number): Gate[] {
  const turns = gateTurns(gates);
  return gates.map((gate, i) => ({ ...gate, x: gate.x - (turns[i] * by) / 2 }));
}

function tryLine(gates: readonly Gate[], options: LineOptions): Line | null {
  try {
    return lineThroughGates(gates, options);
  } catch {
    return null;
  }
}

/** The same pair with every radius scaled as if its sidecut radius were `by` metres longer. */
function withRadius(pair: CoursePair, by: number, conditions: CourseConditions): CoursePair {
  const base = pair.turn.radius(0, conditions.mass * GRAVITY * conditions.outerShare);
  const scale = Math.max(0.1, (base + by) / base);
  const turn: TurnRadius = { ...pair.turn, radius: (edge, load) => scale * pair.turn.radius(edge, load) };
  return { ...pair, turn };
}
