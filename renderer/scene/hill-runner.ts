import { Group, Vector3 } from 'three';
import { ArcLine, pathGeometry } from './arc.ts';
import { Groove } from './groove.ts';
import type { RibbonView } from './ribbon-material.ts';
import type { SkiBend } from './ski-mesh.ts';
import { bootDepth, type PairStyle, rigidSnowBend, SkiObject } from './ski-object.ts';
import type { SkiForm } from './ski-outline.ts';
import type { SlopeFrame } from './slope-frame.ts';
import type { SceneTheme } from './theme.ts';
import {
  AIRBORNE,
  type SceneTrack,
  SLIPPING,
  spacedRows,
  type TrackState,
  trackAt,
  trackState,
} from './track-at.ts';
import { wayMarks } from './way-marks.ts';

/** Bends for every row of a track: row-major, one value a station. */
export interface BendRows {
  readonly x: ArrayLike<number>;
  readonly height: ArrayLike<number>;
  readonly twist?: ArrayLike<number> | null;
  readonly penetration?: ArrayLike<number> | null;
}

/** One pair going down the hill. */
export interface HillRun {
  readonly track: SceneTrack;
  readonly form: SkiForm;
  readonly style: PairStyle;
  /** Bend at a row of the track; null there draws the ski pressed wholly onto rigid snow. */
  readonly bendAt?: ((row: number) => SkiBend | null) | null;
  /** Bends of all rows, used where `bendAt` is absent. */
  readonly bends?: BendRows | null;
  /** Depth drawn for the groove where the bend does not tell it, m; default 0.012. */
  readonly grooveDepth?: number;
}

const CAPACITY = 1000;
/** Ways are told apart this far ahead of the skier, s: nearer the skier stands before them. */
const AHEAD = 0.15;
/** The mass goes over the snow in dashes, m. */
const MASS_DASH = [0.4, 0.4];

/** Ski, groove and path of one run. */
export class HillRunner {
  readonly group = new Group();
  readonly state: TrackState = trackState();
  readonly run: HillRun;
  readonly object: SkiObject;
  readonly centre = new Vector3();
  readonly #groove: Groove;
  readonly #path: ArcLine;
  /** Rows where skis and mass are furthest apart. */
  readonly #wayMarks: readonly number[];
  /** Way of the mass; null where the track does not tell it. */
  readonly #massPath: ArcLine | null;
  readonly #rows: Int32Array;
  readonly #scratch: {
    x: ArrayLike<number>;
    height: Float64Array;
    twist: Float64Array;
    penetration: Float64Array;
  };
  readonly #frame: SlopeFrame;
  #drawn = 0;
  #bentRow = -1;
  #bentEdge = Number.NaN;
  #bend: SkiBend | null = null;

  constructor(run: HillRun, ghost: boolean, frame: SlopeFrame, view: RibbonView) {
    this.run = run;
    this.#frame = frame;
    this.object = new SkiObject(run.form, run.style, ghost);
    const { track } = run;
    let length = 0;
    for (let i = 1; i < track.t.length; i++) {
      length += Math.hypot(track.x[i] - track.x[i - 1], track.y[i] - track.y[i - 1]);
    }
    const capacity = ghost ? 500 : CAPACITY;
    this.#rows = spacedRows(track, Math.max(0.32, (length * 1.02) / capacity));
    this.#groove = new Groove(view, Math.min(capacity, this.#rows.length + 1));
    this.#path = new ArcLine(view);
    this.#path.mesh.geometry.dispose();
    this.#path.mesh.geometry = pathGeometry(
      this.#rows.length,
      i => track.x[this.#rows[i]],
      i => track.y[this.#rows[i]],
      run.style.dash,
      0.006,
      frame,
    );
    this.#path.mesh.material.color.set(run.style.colour);
    this.#path.mesh.material.opacity = ghost ? 0.55 : 0.8;
    const { massX, massY } = track;
    this.#wayMarks = wayMarks(track);
    this.#massPath = massX && massY ? new ArcLine(view) : null;
    if (this.#massPath && massX && massY) {
      const { mesh } = this.#massPath;
      mesh.geometry.dispose();
      mesh.geometry = pathGeometry(
        this.#rows.length,
        i => massX[this.#rows[i]],
        i => massY[this.#rows[i]],
        MASS_DASH,
        0.004,
        frame,
      );
      mesh.material.color.set(run.style.colour);
      mesh.material.opacity = ghost ? 0.35 : 0.6;
      this.group.add(mesh);
    }
    const n = run.bends?.x.length ?? 0;
    this.#scratch = {
      x: run.bends?.x ?? [],
      height: new Float64Array(n),
      twist: new Float64Array(n),
      penetration: new Float64Array(n),
    };
    this.group.add(this.object.group, this.#groove.mesh, this.#path.mesh);
  }

  applyTheme(theme: SceneTheme): void {
    this.#groove.setColour(theme.groove);
    this.#path.setLeastWidth(1.6 * theme.emphasis);
    this.#massPath?.setLeastWidth(1.3 * theme.emphasis);
  }

  showPath(shown: boolean): void {
    this.#path.mesh.visible = shown;
    if (this.#massPath) this.#massPath.mesh.visible = shown;
  }

  /** Puts ski and groove where they are at time t. */
  refresh(t: number, exaggeration: number): void {
    const s = trackAt(this.run.track, t, this.state);
    const side = s.edge < 0 ? -1 : 1;
    if (s.row !== this.#bentRow || Math.abs(s.edge - this.#bentEdge) > 1e-4) {
      this.#bentRow = s.row;
      this.#bentEdge = s.edge;
      this.#bend = this.#bendOf(s.row) ?? rigidSnowBend(this.run.form, Math.min(1.4, Math.abs(s.edge)));
      this.object.setBend(this.#bend, side, exaggeration);
    }
    const { at } = this.object;
    at.x = s.x;
    at.y = s.y;
    at.axis = s.heading;
    at.edge = s.edge;
    at.depth = s.phase === AIRBORNE ? -0.15 : bootDepth(this.#bend, this.run.form);
    this.object.place(this.#frame);
    this.#frame.place(s.x, s.y, 0, this.centre);
    this.#carve(s.row);
  }

  /** Where both ways are next told from each other at time t: points of skis and mass; false where they are not. */
  nextMark(t: number, skis: Vector3, mass: Vector3): boolean {
    const { track } = this.run;
    const row = this.#wayMarks.find(each => track.t[each] > t + AHEAD);
    if (row === undefined || !track.massX || !track.massY || !this.#path.mesh.visible) return false;
    this.#frame.place(track.x[row], track.y[row], 0, skis);
    this.#frame.place(track.massX[row], track.massY[row], 0, mass);
    return true;
  }

  /** Forces the bend to be written again (the exaggeration changed). */
  rebend(): void {
    this.#bentRow = -1;
  }

  dispose(): void {
    this.object.dispose();
    this.#groove.dispose();
    this.#path.dispose();
    this.#massPath?.dispose();
  }

  #bendOf(row: number): SkiBend | null {
    const { bendAt, bends } = this.run;
    if (bendAt) return bendAt(row);
    if (!bends) return null;
    const n = bends.x.length;
    for (let i = 0; i < n; i++) {
      this.#scratch.height[i] = bends.height[row * n + i];
      this.#scratch.twist[i] = bends.twist ? bends.twist[row * n + i] : 0;
      this.#scratch.penetration[i] = bends.penetration ? bends.penetration[row * n + i] : 0;
    }
    return this.#scratch;
  }

  #carve(row: number): void {
    const ribbon = this.#groove.ribbon;
    if (this.#drawn > 0 && this.#rows[this.#drawn - 1] > row) {
      ribbon.clear();
      this.#drawn = 0;
    }
    const { track, form } = this.run;
    const full = 2 * this.object.ski.bootHalfWidth;
    while (this.#drawn < this.#rows.length && this.#rows[this.#drawn] <= row) {
      const i = this.#rows[this.#drawn++];
      if (track.phase[i] === AIRBORNE) {
        ribbon.lift();
        continue;
      }
      const skid = track.phase[i] === SLIPPING;
      const depth = this.run.grooveDepth ?? 0.012;
      const edge = Math.abs(track.edge[i]);
      // Its ends slip at twice the mean angle: so wide it sweeps; on its edge it leaves little more than its steel.
      const swept = full + form.contactLength * Math.sin(2 * track.slip[i]);
      const width = skid
        ? Math.max(swept, 0.22)
        : Math.min(full, depth / Math.sin(Math.max(edge, 0.1))) + 0.06;
      ribbon.add({ x: track.x[i], y: track.y[i], width, depth, kind: skid ? 'skid' : 'carve' }, this.#frame);
    }
  }
}
