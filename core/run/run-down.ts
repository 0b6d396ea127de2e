/**
 * Down the hill: follows the equations of motion from one event to the next and writes the track.
 */

import { DormandPrince } from '../numeric/index.ts';
import { type EdgeProgramme, turnsBegun } from './edge-programme.ts';
import {
  DISTANCE,
  DRAG_WORK,
  DRIFT,
  FRICTION_WORK,
  HEADING,
  Mode,
  motion,
  SKID_WORK,
  SPEED,
  STATE_SIZE,
  STOPPED,
  X,
  Y,
} from './equations.ts';
import { fly } from './flight.ts';
import { type Guard, Watches } from './guard.ts';
import type { RunConditions, RunOptions } from './run-conditions.ts';
import { accept, type FullConditions, fillConditions } from './run-conditions.ts';
import { changeoverStretches, inChangeover } from './skid.ts';
import { SnowContact } from './snow-contact.ts';
import { fillRow } from './snow-row.ts';
import { startHeading } from './start-heading.ts';
import { Phase, type RunEnd, type Track } from './track.ts';
import { emptyRow, type Row, TrackRecorder } from './track-recorder.ts';

/**
 * Runs the skier down the slope.
 *
 * @throws RangeError for a condition out of range (names the field, the value and what is accepted), or when the
 *   equations cannot be followed
 */
export function runDown(conditions: RunConditions, options: RunOptions = {}): Track {
  return new RunDown(fillConditions(conditions), options).follow();
}

/** What a guard saw, where the state itself, on the border, could be read either way. */
type Because = 'hold lost' | 'hold found' | 'bite';

/** More changes of state than this in one run is a chattering model, not a run. */
const MOST_EVENTS = 100_000;

class RunDown {
  private readonly contact: SnowContact;
  private readonly solver: DormandPrince;
  private readonly recorder: TrackRecorder;
  private readonly step: number;
  private readonly maxSeconds: number;
  private readonly stretches: Float64Array;
  private readonly breaks: number[];
  private readonly edged: EdgeProgramme | undefined;
  private mode: Mode = Mode.Holding;
  private side: 1 | -1;
  private turns = 1;
  private landing = 0;
  private skidSeconds = 0;
  private airSeconds = 0;
  private next = 0;
  /** Where the run goes on after something happened; later than the event when a flight came between. */
  private clock = 0;
  private readonly watches: Watches;
  /** What `contact` was last solved for. */
  private readonly solved = { t: Number.NaN, side: 0, state: new Float64Array(STATE_SIZE) };
  private readonly row: Row;

  constructor(
    private readonly run: FullConditions,
    options: RunOptions,
  ) {
    this.step = options.outputStep ?? 0.01;
    this.maxSeconds = options.maxSeconds ?? 300;
    accept('outputStep', this.step, 's', 1e-5, 10);
    accept('maxSeconds', this.maxSeconds, 's', 1e-3, 36_000);
    const uneven = Number.isFinite(run.profile.length);
    const tolerance = options.tolerance ?? (uneven ? 1e-10 : 1e-8);
    accept('tolerance', tolerance, '', 1e-13, 1e-2);
    const { programme } = run;
    this.edged = programme.kind === 'edge' ? programme : undefined;
    this.side = programme.kind === 'banked' && programme.first === 'left' ? -1 : 1;
    this.stretches = this.edged ? changeoverStretches(this.edged, run.startSpeed) : new Float64Array(0);
    this.breaks = this.edged
      ? [...new Set([...this.stretches, ...this.edged.kinks, ...this.edged.changeovers, this.edged.end])]
          .filter(at => at > 0)
          .sort((a, b) => a - b)
      : [];
    this.contact = new SnowContact(run);
    this.watches = new Watches(options.watch ?? [], (name, t, s) => this.note(name, t, s));
    // Work is counted in joules, hundreds of thousands of them: its absolute tolerance is scaled to match.
    const absolute = new Float64Array(STATE_SIZE).fill(0.1 * tolerance);
    absolute.fill(tolerance * run.mass, FRICTION_WORK);
    this.solver = new DormandPrince((t, s, out) => this.rates(t, s, out), STATE_SIZE, {
      relative: tolerance,
      absolute,
      // Measured ground bends within metres; a long step on a straight run would look past it.
      maxStep: uneven ? 0.05 : 0.25,
    });
    const seconds = this.edged?.per === 'time' ? this.edged.end : 60;
    this.recorder = new TrackRecorder(run, Math.ceil(Math.min(seconds, this.maxSeconds) / this.step) + 8);
    this.row = emptyRow();
  }

  follow(): Track {
    const state = new Float64Array(STATE_SIZE);
    state[HEADING] = startHeading(this.run);
    state[SPEED] = this.run.startSpeed;
    let t = 0;
    this.enter(t, state);
    let end: RunEnd | undefined;
    for (let count = 0; end === undefined; count++) {
      if (count > MOST_EVENTS) {
        throw new RangeError(`run: more than ${MOST_EVENTS} changes of state by t = ${t.toFixed(3)} s`);
      }
      const { mode } = this;
      const began = t;
      ({ t, end } = this.segment(t, state));
      if (mode === Mode.Slipping) this.skidSeconds += t - began;
      t = this.clock;
    }
    this.record(t, state);
    return this.recorder.finish(end, this.skidSeconds, this.airSeconds, this.turnsBegun(t, state));
  }

  /** Follows one mode until something happens; leaves the state there in `state`. */
  private segment(t0: number, state: Float64Array): { t: number; end: RunEnd | undefined } {
    const { solver } = this;
    const guards = this.guards(t0, state);
    const timeBreak = this.edged?.per === 'time' ? (this.breaks.find(at => at > t0) ?? Infinity) : Infinity;
    const tEnd = Math.min(this.maxSeconds, timeBreak);
    solver.start(t0, state);
    const olds = guards.map(g => (this.watches.justSeen(g, t0) ? -1 : g.value(t0, state)));
    const scratch = new Float64Array(STATE_SIZE);
    const row = new Float64Array(STATE_SIZE);
    for (;;) {
      solver.step(tEnd);
      let first: Guard | undefined;
      let at = solver.t;
      state.set(solver.y);
      for (const [i, guard] of guards.entries()) {
        const now = guard.value(solver.t, solver.y);
        if (now < 0 && (olds[i] > 0 || !guard.watch)) {
          // A guard that was already past at the start happens at the end of the step.
          const when = olds[i] > 0 ? solver.locate(guard.value, olds[i], now, scratch) : solver.t;
          if (when < at || !first) {
            first = guard;
            at = when;
            if (olds[i] > 0) state.set(scratch);
            else state.set(solver.y);
          }
        }
        olds[i] = now;
      }
      for (; this.next * this.step <= at + 1e-12; this.next++) {
        const time = Math.min(this.next * this.step, at);
        solver.at(time, row);
        this.record(time, row);
      }
      this.clock = at;
      if (first) return { t: at, end: first.happen(at, state) };
      if (at >= tEnd) {
        if (at >= this.maxSeconds) return { t: at, end: 'time over' };
        if (at >= (this.edged?.end ?? Infinity)) return { t: at, end: 'programme over' };
        this.enter(at, state);
        return { t: at, end: undefined };
      }
    }
  }

  private guards(t0: number, from: Float64Array): Guard[] {
    const { run } = this;
    const guards: Guard[] = [
      { value: (_t, s) => s[SPEED] - STOPPED, happen: () => 'stopped' },
      {
        value: (t, s) => this.solve(t, s).normal,
        happen: (t, s) => this.takeOff(t, s),
      },
    ];
    if (Number.isFinite(run.profile.length)) {
      guards.push({ value: (_t, s) => run.profile.length - s[Y], happen: () => 'end of slope' });
    }
    const change = (because?: Because) => (t: number, s: Float64Array) => {
      this.enter(t, s, because);
      return undefined;
    };
    const flattening = (t: number, s: Float64Array) => this.solve(t, s).edge - run.baseBevel;
    switch (this.mode) {
      case Mode.Holding:
        guards.push({ value: (t, s) => this.solve(t, s).margin, happen: change('hold lost') });
        guards.push({ value: flattening, happen: change() });
        break;
      case Mode.Slipping:
        guards.push({ value: (t, s) => -this.solve(t, s).margin, happen: change('hold found') });
        guards.push({ value: flattening, happen: change() });
        break;
      case Mode.Flat:
        guards.push({ value: (t, s) => -flattening(t, s), happen: change('bite') });
        break;
      case Mode.Banked: {
        const { programme } = run;
        guards.push({ value: (t, s) => this.solve(t, s).margin, happen: () => 'no balanced lean' });
        if (programme.kind === 'banked') {
          guards.push({
            value: (_t, s) => programme.traverse - this.side * s[HEADING],
            happen: (t, s) => {
              this.note('traverse', t, s);
              if (this.turns >= programme.turns) return 'programme over';
              this.turns++;
              this.side = this.side === 1 ? -1 : 1;
              return undefined;
            },
          });
        }
        break;
      }
    }
    if (this.edged?.per === 'distance') {
      const at = this.breaks.find(b => b > from[DISTANCE] + 1e-7);
      if (at !== undefined) {
        guards.push({
          value: (_t, s) => at - s[DISTANCE],
          happen: (t, s) => {
            if (at >= (this.edged as EdgeProgramme).end) return 'programme over';
            this.enter(t, s);
            return undefined;
          },
        });
      }
    }
    guards.push(...this.watches.guards(t0, from));
    return guards;
  }

  /** Chooses the mode for the state at a change, and notes where a skid begins and ends. */
  private enter(t: number, s: Float64Array, because?: Because): void {
    const before = this.mode;
    this.mode = this.modeFor(t, s, because);
    if (this.mode === Mode.Slipping && before !== Mode.Slipping) this.note('hold lost', t, s);
    if (this.mode !== Mode.Slipping && before === Mode.Slipping) this.note('hold found', t, s);
  }

  private modeFor(t: number, s: Float64Array, because?: Because): Mode {
    if (!this.edged) return Mode.Banked;
    if (inChangeover(this.stretches, this.edged.per === 'time' ? t : s[DISTANCE])) return Mode.Changeover;
    if (because === 'hold lost') return Mode.Slipping;
    if (because === 'hold found') return Mode.Holding;
    const { edge, margin } = this.solve(t, s);
    if (edge <= this.run.baseBevel + 1e-9 && because !== 'bite') return Mode.Flat;
    return margin >= 0 ? Mode.Holding : Mode.Slipping;
  }

  private rates(t: number, s: Float64Array, out: Float64Array): void {
    motion(this.run, this.solve(t, s), this.mode, s, out);
  }

  private solve(t: number, s: Float64Array): SnowContact {
    const { contact, solved, side } = this;
    // Every guard asks about the end of a step, which the last stage of the step has just solved.
    let same = t === solved.t && side === solved.side;
    for (let i = Y; i <= DISTANCE && same; i++) same = s[i] === solved.state[i];
    if (same) return contact;
    solved.t = t;
    solved.side = side;
    for (let i = Y; i <= DISTANCE; i++) solved.state[i] = s[i];
    if (this.edged) {
      const edge = this.edged.edge(this.edged.per === 'time' ? t : s[DISTANCE]);
      contact.solveEdged(edge, s[Y], s[HEADING], s[SPEED], s[DRIFT]);
    } else {
      contact.solveBanked(this.side, s[Y], s[HEADING], s[SPEED]);
    }
    return contact;
  }

  private takeOff(t: number, s: Float64Array): RunEnd | undefined {
    this.note('airborne', t, s);
    const { row } = this;
    const landed = fly(
      this.run,
      {
        t,
        x: s[X],
        y: s[Y],
        heading: s[HEADING],
        speed: s[SPEED],
        distance: s[DISTANCE],
        drag: s[DRAG_WORK],
      },
      this.edged?.per === 'time' ? Math.min(this.edged.end, this.maxSeconds) : this.maxSeconds,
      this.step,
      this.next,
      (time, x, y, heading, speed, distance, height, drag) => {
        Object.assign(row, emptyRow(), { t: time, x, y, heading, speed, distance, height, drag });
        row.drift = s[DRIFT];
        row.edge = this.edgeAt(time, distance);
        row.phase = Phase.Airborne;
        row.friction = s[FRICTION_WORK];
        row.skid = s[SKID_WORK];
        row.landing = this.landing;
        this.recorder.add(row);
        this.next++;
      },
    );
    this.clock = landed.t;
    this.airSeconds += landed.t - t;
    this.landing += landed.lost;
    s[X] = landed.x;
    s[Y] = landed.y;
    s[HEADING] = landed.heading;
    s[SPEED] = landed.speed;
    s[DISTANCE] = landed.distance;
    s[DRAG_WORK] = landed.drag;
    if (!landed.down) return landed.t >= this.maxSeconds ? 'time over' : 'programme over';
    this.note('landed', landed.t, s);
    this.enter(landed.t, s);
    return undefined;
  }

  private edgeAt(t: number, distance: number): number {
    if (!this.edged) return 0;
    return this.edged.edge(this.edged.per === 'time' ? t : distance);
  }

  private record(t: number, s: Float64Array): void {
    if (t <= this.recorder.lastTime) return;
    const { row } = this;
    row.t = t;
    row.landing = this.landing;
    fillRow(row, this.run, this.solve(t, s), this.mode, s);
    this.recorder.add(row);
  }

  private note(name: string, t: number, s: Float64Array): void {
    this.recorder.events.push({ name, t, x: s[X], y: s[Y], heading: s[HEADING], speed: s[SPEED] });
  }

  private turnsBegun(t: number, s: Float64Array): number {
    return this.edged ? turnsBegun(this.edged, this.edged.per === 'time' ? t : s[DISTANCE]) : this.turns;
  }
}
