/**
 * Collects the rows of a run into growing columns and closes the energy book on each.
 */

import { angulation, GRAVITY } from './balance.ts';
import type { FullConditions } from './run-conditions.ts';
import {
  COLUMNS,
  type Column,
  ENERGY_COLUMNS,
  type EnergyColumn,
  Phase,
  type RunEnd,
  type Track,
  type TrackEvent,
} from './track.ts';

/** One row before it is written; filled again and again. */
export interface Row {
  t: number;
  x: number;
  y: number;
  heading: number;
  speed: number;
  drift: number;
  /** Signed. */
  edge: number;
  side: number;
  /** Towards the turn. */
  lean: number;
  load: number;
  radius: number;
  hold: number;
  distance: number;
  /** Height over the start, m. */
  height: number;
  phase: Phase;
  friction: number;
  drag: number;
  skid: number;
  landing: number;
}

/** A row of zeros; a row in the air unless more is filled in. */
export function emptyRow(): Row {
  return {
    t: 0,
    x: 0,
    y: 0,
    heading: 0,
    speed: 0,
    drift: 0,
    edge: 0,
    side: 1,
    lean: 0,
    load: 0,
    radius: Infinity,
    hold: 0,
    distance: 0,
    height: 0,
    phase: Phase.Airborne,
    friction: 0,
    drag: 0,
    skid: 0,
    landing: 0,
  };
}

export class TrackRecorder {
  private size = 0;
  private readonly columns = {} as Record<Column, Float64Array>;
  private readonly energy = {} as Record<EnergyColumn, Float64Array>;
  private phase: Uint8Array;
  readonly events: TrackEvent[] = [];
  private readonly weight: number;
  private readonly startKinetic: number;
  private maxLoad = 0;
  private minHold = Infinity;
  private maxSpeed = 0;
  private worst = 0;

  constructor(
    private readonly run: FullConditions,
    private room: number,
  ) {
    for (const name of COLUMNS) this.columns[name] = new Float64Array(room);
    for (const name of ENERGY_COLUMNS) this.energy[name] = new Float64Array(room);
    this.phase = new Uint8Array(room);
    this.weight = run.mass * GRAVITY;
    this.startKinetic = 0.5 * run.mass * run.startSpeed * run.startSpeed;
  }

  get lastTime(): number {
    return this.size === 0 ? -1 : this.columns.t[this.size - 1];
  }

  add(row: Row): void {
    if (this.size === this.room) this.grow();
    const i = this.size++;
    const { columns: c, energy: e } = this;
    c.t[i] = row.t;
    c.x[i] = row.x;
    c.y[i] = row.y;
    c.heading[i] = row.heading;
    c.speed[i] = row.speed;
    c.drift[i] = row.drift;
    c.edge[i] = row.edge;
    c.lean[i] = row.side * row.lean;
    c.angulation[i] = angulation(Math.abs(row.edge), row.lean);
    c.load[i] = row.load;
    c.loadBodyWeights[i] = row.load / this.weight;
    c.radius[i] = row.radius;
    c.hold[i] = row.hold;
    c.distance[i] = row.distance;
    c.drop[i] = -row.height;
    this.phase[i] = row.phase;
    const drop = -this.weight * row.height;
    const kinetic = 0.5 * this.run.mass * row.speed * row.speed - this.startKinetic;
    const error = drop - kinetic - row.friction - row.drag - row.skid - row.landing;
    e.drop[i] = drop;
    e.kinetic[i] = kinetic;
    e.friction[i] = row.friction;
    e.drag[i] = row.drag;
    e.skid[i] = row.skid;
    e.landing[i] = row.landing;
    e.errorRatio[i] = Math.abs(error) / Math.max(Math.abs(drop), this.startKinetic);
    this.worst = Math.max(this.worst, e.errorRatio[i]);
    this.maxLoad = Math.max(this.maxLoad, row.load);
    this.maxSpeed = Math.max(this.maxSpeed, row.speed);
    if (row.phase === Phase.Holding || row.phase === Phase.Slipping) {
      this.minHold = Math.min(this.minHold, row.hold);
    }
  }

  finish(end: RunEnd, skidSeconds: number, airSeconds: number, turns: number): Track {
    const n = this.size;
    // Copying columns that are nearly full costs more than the few rows they would be shortened by.
    const cut = (from: Float64Array) => (n > 0.95 * this.room ? from.subarray(0, n) : from.slice(0, n));
    const columns = {} as Record<Column, Float64Array>;
    for (const name of COLUMNS) columns[name] = cut(this.columns[name]);
    const energy = {} as Record<EnergyColumn, Float64Array>;
    for (const name of ENERGY_COLUMNS) energy[name] = cut(this.energy[name]);
    return {
      ...columns,
      phase: this.phase.slice(0, n),
      energy,
      events: this.events,
      summary: {
        seconds: columns.t[n - 1],
        distance: columns.distance[n - 1],
        drop: columns.drop[n - 1],
        endSpeed: columns.speed[n - 1],
        maxSpeed: this.maxSpeed,
        maxLoadBodyWeights: this.maxLoad / this.weight,
        minHold: this.minHold === Infinity ? Number.NaN : this.minHold,
        skidSeconds,
        airSeconds,
        turns,
        energyErrorRatio: this.worst,
        end,
      },
    };
  }

  private grow(): void {
    this.room *= 2;
    const wider = (from: Float64Array) => {
      const to = new Float64Array(this.room);
      to.set(from);
      return to;
    };
    for (const name of COLUMNS) this.columns[name] = wider(this.columns[name]);
    for (const name of ENERGY_COLUMNS) this.energy[name] = wider(this.energy[name]);
    const phase = new Uint8Array(this.room);
    phase.set(this.phase);
    this.phase = phase;
  }
}
