import { HELD_BACK_BY, type HeldBackBy, type LineConditions, type Rhythm } from '../../../core/line/index.ts';
import { FLAT_UP_TO, Phase, SLIPPING_FROM, type Track } from '../../../core/run/index.ts';
import { BITE, GRAVITY, GRIP_FROM } from '../../../core/skier/index.ts';

/** A rhythm skied for some gates: a track like that of any run, with what holds the skier back in each row. */
export interface RhythmTrack {
  readonly track: Track;
  readonly heldBackBy: readonly HeldBackBy[];
}

/** Columns whose sign goes with the side of the turn. */
const MIRRORED = ['x', 'massX', 'heading', 'edge', 'lean', 'leanRate', 'curvature', 'mismatch'] as const;
const KEPT = ['speed', 'skiSpeed', 'leg', 'legSpeed', 'loadBodyWeights', 'drift', 'wall'] as const;
type Name = (typeof MIRRORED)[number] | (typeof KEPT)[number];

/**
 * The quickest turn from gate to gate, mirrored and set one after another.
 *
 * @param gates how many turns, from 1
 */
export function rhythmTrack({ run, question }: Rhythm, gates: number): RhythmTrack {
  const { conditions, spacing } = question;
  const { skier, slope } = conditions;
  const nodes = run.t.length;
  const rows = gates * (nodes - 1) + 1;
  const source: Record<Name, Float64Array> = {
    ...run,
    skiSpeed: run.speed,
    speed: run.massSpeed,
    loadBodyWeights: run.push,
  };
  const make = () => new Float64Array(rows);
  const of = Object.fromEntries([...MIRRORED, ...KEPT].map(name => [name, make()])) as Record<
    Name,
    Float64Array
  >;
  const t = make();
  const y = make();
  const massY = make();
  const distance = make();
  const heldBackBy: HeldBackBy[] = new Array(rows);
  for (let row = 0; row < rows; row++) {
    const gate = Math.min(gates - 1, Math.floor(row / (nodes - 1)));
    const k = row - gate * (nodes - 1);
    const side = gate % 2 === 0 ? 1 : -1;
    for (const name of MIRRORED) of[name][row] = side * source[name][k]!;
    for (const name of KEPT) of[name][row] = source[name][k]!;
    t[row] = gate * run.seconds + run.t[k]!;
    y[row] = gate * spacing + run.y[k]!;
    massY[row] = gate * spacing + run.massY[k]!;
    distance[row] = gate * run.distance[nodes - 1]! + run.distance[k]!;
    heldBackBy[row] = HELD_BACK_BY[run.limit[k]!]!;
  }
  const sine = slope.sine(0);
  const quarter = conditions.contactLength / 4;
  const side = (row: number) => (of.edge[row]! < 0 ? -1 : 1);
  const map = (read: (row: number) => number) => Float64Array.from({ length: rows }, (_, row) => read(row));
  const slip = map(row => of.drift[row]! + Math.abs(of.mismatch[row]!) * quarter);
  const hold = map(
    row =>
      side(row) * (of.edge[row]! - of.lean[row]!) -
      conditions.baseBevel * Math.tanh(Math.abs(of.edge[row]!) / BITE),
  );
  const phase = Uint8Array.from({ length: rows }, (_, row) =>
    slip[row]! > SLIPPING_FROM
      ? Phase.Slipping
      : Math.abs(of.edge[row]!) < FLAT_UP_TO
        ? Phase.Flat
        : Phase.Holding,
  );
  const energy = bookOf({ ...of, t, massY, slip }, conditions);
  const most = (column: Float64Array) => column.reduce((a, v) => Math.max(a, Math.abs(v)), 0);
  const last = rows - 1;
  let skidSeconds = 0;
  for (let row = 0; row < last; row++)
    if (phase[row] === Phase.Slipping) skidSeconds += t[row + 1]! - t[row]!;
  const judged = hold.filter((_, row) => Math.abs(of.edge[row]!) >= GRIP_FROM);
  return {
    heldBackBy,
    track: {
      ...of,
      t,
      y,
      massY,
      distance,
      slip,
      hold,
      phase,
      energy,
      angulation: map(row => side(row) * (of.edge[row]! - of.lean[row]!)),
      load: of.loadBodyWeights.map(each => each * skier.mass * GRAVITY),
      radius: of.curvature.map(each => (Math.abs(each) > 1e-9 ? 1 / Math.abs(each) : Infinity)),
      drop: y.map(each => each * sine),
      events: [],
      summary: {
        seconds: t[last]!,
        distance: distance[last]!,
        drop: y[last]! * sine,
        endSpeed: of.speed[last]!,
        maxSpeed: most(of.speed),
        maxLoadBodyWeights: most(of.loadBodyWeights),
        maxLean: most(of.lean),
        minLeg: of.leg.reduce((a, v) => Math.min(a, v), Infinity),
        maxMismatch: most(of.mismatch),
        minHold: judged.length > 0 ? judged.reduce((a, v) => Math.min(a, v), Infinity) : Number.NaN,
        maxWall: most(of.wall),
        skidSeconds,
        airSeconds: 0,
        turns: gates,
        energyErrorRatio: most(energy.errorRatio),
        end: 'programme over',
      },
    },
  };
}

type BookColumns = Record<'t' | 'massY' | 'slip' | Name, Float64Array>;

/** Where the energy went up to each row, by the rule of the middle between rows. */
function bookOf(
  c: BookColumns,
  { skier, slope, friction, scrape, airDensity }: LineConditions,
): Track['energy'] {
  const rows = c.t.length;
  const { mass, dragArea } = skier;
  const weight = mass * GRAVITY;
  const sine = slope.sine(0);
  const cosine = Math.sqrt(1 - sine * sine);
  const make = () => new Float64Array(rows);
  const book = {
    drop: make(),
    kinetic: make(),
    swing: make(),
    legs: make(),
    friction: make(),
    drag: make(),
    scrape: make(),
    errorRatio: make(),
  };
  const height = (row: number) => c.leg[row]! * Math.cos(c.lean[row]!) * cosine - c.massY[row]! * sine;
  const swingOf = (row: number) =>
    0.5 * mass * (c.legSpeed[row]! ** 2 + (c.leg[row]! * c.leanRate[row]!) ** 2);
  const kineticOf = (row: number) => 0.5 * mass * c.speed[row]! ** 2 + swingOf(row);
  for (let row = 0; row < rows; row++) {
    book.drop[row] = weight * (height(0) - height(row));
    book.swing[row] = swingOf(row) - swingOf(0);
    book.kinetic[row] = kineticOf(row) - kineticOf(0);
    if (row === 0) continue;
    const step = c.t[row]! - c.t[row - 1]!;
    const middle = (column: Float64Array) => 0.5 * (column[row]! + column[row - 1]!);
    const push = weight * middle(c.loadBodyWeights);
    const travelled = middle(c.speed) * step;
    book.friction[row] = book.friction[row - 1]! + friction * push * travelled;
    book.scrape[row] = book.scrape[row - 1]! + scrape * middle(c.slip) * push * travelled;
    book.drag[row] = book.drag[row - 1]! + 0.5 * airDensity * dragArea * middle(c.speed) ** 2 * travelled;
    book.legs[row] = book.legs[row - 1]! + push * middle(c.legSpeed) * step;
    const left =
      book.drop[row]! +
      book.legs[row]! -
      book.kinetic[row]! -
      book.friction[row]! -
      book.drag[row]! -
      book.scrape[row]!;
    book.errorRatio[row] = Math.abs(left) / Math.max(kineticOf(0), Math.abs(book.drop[row]!));
  }
  return book;
}
