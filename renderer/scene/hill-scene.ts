import { Group, type InstancedMesh, type Material, Vector3 } from 'three';
import { ForceArrow } from './arrows.ts';
import type { CameraPose } from './camera-rig.ts';
import { type GatePole, gatePoles } from './gates.ts';
import { type HillRun, HillRunner } from './hill-runner.ts';
import { DETAIL_LAYER, FAR_LAYER, LabelSet } from './label.ts';
import { Playback } from './playback.ts';
import type { RibbonView } from './ribbon-material.ts';
import type { SetUp } from './set-up.ts';
import { Skier } from './skier.ts';
import { evenGround, type Ground, SlopeFrame } from './slope-frame.ts';
import { SnowSurface } from './snow-surface.ts';
import { type SceneTheme, THEMES } from './theme.ts';
import { AIRBORNE } from './track-at.ts';

export type ForceName = 'weight' | 'snow' | 'sideways';

export interface HillSceneInput {
  /** Slope angle in rad, or the ground down the fall line (a slope profile of the run model fits). */
  readonly slope: number | Ground;
  /** One run, or two: the second goes along as a ghost at the same time. */
  readonly runs: readonly HillRun[];
  readonly gates?: readonly GatePole[];
  /** Mass of skier and kit, kg: the scale of the arrows. */
  readonly mass: number;
  /** Share of the load on the ski drawn is not taken off: arrows show the skier's whole force. */
  readonly arrows?: boolean;
  /** Text of an arrow's label; arrows stay without one when absent. */
  readonly forceText?: (name: ForceName, newtons: number) => string;
  /** Multiplies bend and twist as drawn; default 1, true. */
  readonly exaggeration?: number;
  readonly figure?: boolean;
  /** Line of the whole way, ahead of the skier too; default true. */
  readonly pathShown?: boolean;
}

export type HillCamera = 'follow' | 'side' | 'above' | 'along' | 'whole';

const HILL_CAMERAS: readonly HillCamera[] = ['follow', 'side', 'above', 'along', 'whole'];

const GRAVITY = 9.80665;
/** Metres drawn for one body weight. */
const ARROW_SCALE = 0.85;

/** A run down the hill: ski, groove, figure and forces at a time. */
export class HillScene implements SetUp<HillSceneInput, HillCamera> {
  readonly root = new Group();
  readonly labels = new LabelSet(this.root);
  readonly playback = new Playback();
  readonly cameras = HILL_CAMERAS;
  readonly shadowCentre = new Vector3();
  readonly shadowReach = 3.4;
  frame = new SlopeFrame(evenGround(0.25));
  readonly #view: RibbonView;
  readonly #surface = new SnowSurface();
  readonly #skier = new Skier();
  readonly #arrows = [0, 1, 2].map(() => ({
    arrow: new ForceArrow(),
    label: this.labels.make(DETAIL_LAYER, 1),
  }));
  /** Which of the two ways ahead is whose. */
  readonly #ways = { skis: this.labels.make(DETAIL_LAYER), mass: this.labels.make(DETAIL_LAYER) };
  readonly #marks = [0, 1].map(() => this.labels.make(FAR_LAYER));
  #runners: HillRunner[] = [];
  #gates: InstancedMesh | null = null;
  #input: HillSceneInput | null = null;
  #theme: SceneTheme = THEMES.snow;
  #started = false;
  readonly #box = { left: 0, right: 0, top: 0, bottom: 0 };
  readonly #leanUp = new Vector3();
  readonly #down = new Vector3();
  readonly #across = new Vector3();
  readonly #normal = new Vector3();
  readonly #side = new Vector3();
  readonly #forward = new Vector3();

  constructor(view: RibbonView) {
    this.#view = view;
    this.root.add(this.#surface.group, this.#skier.group);
    for (const { arrow } of this.#arrows) this.root.add(arrow.mesh);
  }

  get snow() {
    return this.#surface.piste;
  }

  /** @throws RangeError when there is no run, more than two, or a track without rows */
  update(input: HillSceneInput): void {
    if (input.runs.length < 1 || input.runs.length > 2) {
      throw new RangeError(`runs: ${input.runs.length} found; one or two are accepted`);
    }
    for (const run of input.runs) {
      if (run.track.t.length < 2) {
        throw new RangeError(`track: ${run.track.t.length} rows found; two or more are accepted`);
      }
    }
    const old = this.#input;
    const newSlope = !old || old.slope !== input.slope;
    if (newSlope) {
      this.frame = new SlopeFrame(typeof input.slope === 'number' ? evenGround(input.slope) : input.slope);
    }
    const newRuns = newSlope || !old || !sameRuns(old.runs, input.runs);
    const newGates = newSlope || old?.gates !== input.gates;
    const rebend = old?.exaggeration !== input.exaggeration;
    this.#input = input;
    if (newRuns) {
      this.#layRunners(input);
      this.playback.setDuration(Math.max(...input.runs.map(r => r.track.t[r.track.t.length - 1])));
    }
    if (newGates) this.#layGates(input);
    if (newRuns || newGates) this.#laySnow(input);
    for (const runner of this.#runners) {
      runner.showPath(input.pathShown ?? true);
      if (rebend) runner.rebend();
    }
    if (!this.#started) {
      this.#started = true;
      this.playback.seek(0);
    }
  }

  refresh(): void {
    const input = this.#input;
    if (!input) return;
    for (const runner of this.#runners) runner.refresh(this.playback.time, input.exaggeration ?? 1);
    const first = this.#runners[0];
    const s = first.state;
    this.frame.direct(0, 1, 0, s.y, this.#down);
    this.frame.direct(1, 0, 0, s.y, this.#across);
    this.frame.direct(0, 0, 1, s.y, this.#normal);
    this.frame.direct(Math.cos(s.heading), -Math.sin(s.heading), 0, s.y, this.#side);
    const axis = s.heading;
    this.frame.direct(Math.sin(axis), Math.cos(axis), 0, s.y, this.#forward);
    this.#leanUp
      .copy(this.#normal)
      .multiplyScalar(Math.cos(s.lean))
      .addScaledVector(this.#side, Math.sin(s.lean));
    this.shadowCentre.copy(first.centre).addScaledVector(this.#normal, 0.3);
    this.#skier.group.visible = input.figure ?? true;
    this.labels.keepClear(this.#skier.group.visible ? this.#skier.points : []);
    this.#skier.pose(first.object.seat.origin, first.object.seat.up, this.#leanUp, this.#forward, s.leg);
    this.#drawForces(input);
    this.#nameWays(first);
    this.#marks.forEach((mark, i) => {
      const runner = this.#runners[i];
      const { letter, colour } = runner?.run.style ?? { letter: '', colour: '' };
      mark.set(letter, colour, this.#theme);
      if (runner) mark.sprite.position.copy(runner.centre).addScaledVector(this.#normal, 1);
    });
  }

  #nameWays(runner: HillRunner): void {
    const { skis, mass } = this.#ways;
    const reported = runner.nextMark(this.playback.time, skis.sprite.position, mass.sprite.position);
    skis.set(reported ? 'skis' : '', runner.run.style.colour, this.#theme);
    mass.set(reported ? 'mass' : '', runner.run.style.colour, this.#theme);
  }

  coarsen(): void {
    this.#surface.coarsen();
  }

  dress(smallPicture: boolean, camera: HillCamera): void {
    // In a small picture of the whole run the skier is a speck; the letter stands for it.
    const seen = !(smallPicture && camera === 'whole');
    for (const runner of this.#runners) runner.object.group.visible = seen;
    this.#skier.group.visible = seen && (this.#input?.figure ?? true);
  }

  applyTheme(theme: SceneTheme): void {
    this.#theme = theme;
    this.#surface.applyTheme(theme);
    this.#skier.setColours(theme.figure, theme.sideways);
    const colours = [theme.weight, theme.snowForce, theme.sideways];
    this.#arrows.forEach(({ arrow }, i) => {
      arrow.setColour(colours[i]);
    });
    for (const runner of this.#runners) runner.applyTheme(theme);
  }

  pose(camera: HillCamera, _aspect: number, out: CameraPose): void {
    const first = this.#runners[0];
    if (!first) return;
    out.fov = 34;
    out.target.copy(first.centre).addScaledVector(this.#normal, 0.75);
    const set = (down: number, across: number, normal: number) =>
      out.direction
        .copy(this.#down)
        .multiplyScalar(down)
        .addScaledVector(this.#across, across)
        .addScaledVector(this.#normal, normal);
    switch (camera) {
      case 'follow':
        set(-1, 0, 0.2);
        out.fov = 46;
        out.target.addScaledVector(this.#down, 1).addScaledVector(this.#normal, 0.4);
        out.wide = 5;
        out.high = 4.2;
        break;
      case 'side':
        set(0.1, 1, 0.18);
        out.wide = 4.6;
        out.high = 3.2;
        break;
      case 'above':
        set(0, 0, 1);
        out.target.addScaledVector(this.#down, 1);
        out.wide = 16;
        out.high = 14;
        break;
      case 'along':
        out.direction.copy(this.#forward).addScaledVector(this.#normal, 0.16);
        out.fov = 24;
        out.wide = 2.6;
        out.high = 2.5;
        break;
      default: {
        const { left, right, top, bottom } = this.#box;
        this.frame.place((left + right) / 2, (top + bottom) / 2, 0, out.target);
        // From the side, so that the length of the run fills the width of the picture.
        this.frame.direct(-0.8, 0.3, 0.62, (top + bottom) / 2, out.direction);
        out.wide = (bottom - top) * 1.06 + 8;
        out.high = Math.max((right - left) * 0.8 + (bottom - top) * 0.4, 10);
      }
    }
  }

  insetFor(camera: HillCamera): HillCamera {
    return camera === 'whole' || camera === 'above' ? 'follow' : 'whole';
  }

  detailLabels(camera: HillCamera): boolean {
    return camera !== 'whole' && camera !== 'above';
  }

  dispose(): void {
    for (const runner of this.#runners) runner.dispose();
    this.#dropGates();
    for (const { arrow } of this.#arrows) arrow.dispose();
    this.#surface.dispose();
    this.#skier.dispose();
    this.labels.dispose();
  }

  #layRunners(input: HillSceneInput): void {
    for (const runner of this.#runners) {
      this.root.remove(runner.group);
      runner.dispose();
    }
    this.#runners = input.runs.map((run, i) => new HillRunner(run, i > 0, this.frame, this.#view));
    for (const runner of this.#runners) {
      runner.applyTheme(this.#theme);
      this.root.add(runner.group);
    }
  }

  #layGates(input: HillSceneInput): void {
    this.#dropGates();
    if (!input.gates?.length) return;
    this.#gates = gatePoles(input.gates, this.frame);
    this.root.add(this.#gates);
  }

  #dropGates(): void {
    if (!this.#gates) return;
    this.root.remove(this.#gates);
    this.#gates.geometry.dispose();
    (this.#gates.material as Material).dispose();
    this.#gates.dispose();
    this.#gates = null;
  }

  #laySnow(input: HillSceneInput): void {
    const box = this.#box;
    box.left = box.top = Number.POSITIVE_INFINITY;
    box.right = box.bottom = Number.NEGATIVE_INFINITY;
    const take = (x: number, y: number) => {
      box.left = Math.min(box.left, x);
      box.right = Math.max(box.right, x);
      box.top = Math.min(box.top, y);
      box.bottom = Math.max(box.bottom, y);
    };
    for (const { track } of input.runs) for (let i = 0; i < track.t.length; i++) take(track.x[i], track.y[i]);
    for (const gate of input.gates ?? []) take(gate.x, gate.y);
    const half = Math.max(14, (box.right - box.left) / 2 + 9);
    const middle = (box.left + box.right) / 2;
    this.#surface.setExtent(
      { left: middle - half, right: middle + half, top: box.top - 25, bottom: box.bottom + 45, beyond: 160 },
      this.frame,
    );
  }

  #drawForces(input: HillSceneInput): void {
    const s = this.#runners[0].state;
    const shown = input.arrows ?? true;
    const weight = input.mass * GRAVITY;
    const aloft = s.phase === AIRBORNE;
    const snow = shown && !aloft ? s.load : 0;
    const sideways = snow * Math.sin(s.lean);
    const { mass, foot } = this.#skier.joints;
    const theme = this.#theme;
    if (sideways < 0) this.#side.negate();
    this.#putForce(0, 'weight', mass, DOWN, shown ? weight : 0, theme.weight);
    this.#putForce(1, 'snow', foot, this.#leanUp, snow, theme.snowForce);
    this.#putForce(2, 'sideways', foot, this.#side, Math.abs(sideways), theme.sideways);
  }

  #putForce(i: number, name: ForceName, from: Vector3, way: Vector3, newtons: number, colour: string): void {
    const { arrow, label } = this.#arrows[i];
    const input = this.#input!;
    arrow.set(from, way, (newtons / (input.mass * GRAVITY)) * ARROW_SCALE, 1.15);
    label.set((arrow.mesh.visible && input.forceText?.(name, newtons)) || '', colour, this.#theme);
    label.sprite.position.copy(arrow.point);
  }
}

const DOWN = new Vector3(0, -1, 0);

function sameRuns(a: readonly HillRun[], b: readonly HillRun[]): boolean {
  return (
    a.length === b.length &&
    a.every((run, i) => {
      const other = b[i];
      return (
        run.track === other.track &&
        run.form === other.form &&
        run.bendAt === other.bendAt &&
        run.bends === other.bends &&
        run.grooveDepth === other.grooveDepth &&
        run.style.letter === other.style.letter &&
        run.style.colour === other.style.colour &&
        run.style.dash.join() === other.style.dash.join()
      );
    })
  );
}
