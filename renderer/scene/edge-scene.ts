import { Group, Vector3 } from 'three';
import { DEGREE } from '../../core/units/index.ts';
import { type ArcPath, type PlanePoint, pointOnArc } from './arc.ts';
import { type ArcExtent, arcExtent } from './arc-extent.ts';
import type { CameraPose } from './camera-rig.ts';
import { type ArcUnit, EdgeArcs } from './edge-arcs.ts';
import { framePoints } from './frame-points.ts';
import { Groove } from './groove.ts';
import { LabelSet } from './label.ts';
import { Playback } from './playback.ts';
import type { RibbonView } from './ribbon-material.ts';
import type { SetUp } from './set-up.ts';
import type { SkiBend } from './ski-mesh.ts';
import { bootDepth, type PairStyle, rigidSnowBend, SkiObject } from './ski-object.ts';
import type { SkiForm } from './ski-outline.ts';
import { Skier } from './skier.ts';
import { evenGround, SlopeFrame } from './slope-frame.ts';
import { SnowSurface } from './snow-surface.ts';
import { type SceneTheme, THEMES } from './theme.ts';

/** One ski held in its carve. SI, radians. */
export interface EdgeSki {
  readonly form: SkiForm;
  readonly style: PairStyle;
  /** Edge angle under the boot, 0 to below π/2. */
  readonly edgeAngle: number;
  /** Solved bend; null draws the ski pressed wholly onto rigid snow. */
  readonly bend: SkiBend | null;
  readonly turnRadius: number;
  /** Mean angle at which its edge slips off its own arc, rad; absent or 0 while it carves. */
  readonly slip?: number;
  /** Text at the end of its arc; letter and radius when absent. Empty hides it. */
  readonly label?: string;
  /** False keeps its arc hidden (a guess is asked for first). */
  readonly arcShown?: boolean;
}

/** An arc without a ski: a guess, or the rule beside the solved radius. */
export interface ExtraArc {
  readonly turnRadius: number;
  readonly style: PairStyle;
  readonly label: string;
}

export interface EdgeSceneInput {
  /** Slope angle, rad. */
  readonly slopeAngle: number;
  /** One ski, or two to compare; both leave the same point along the same line. */
  readonly skis: readonly EdgeSki[];
  readonly extraArcs?: readonly ExtraArc[];
  /** Line between the ends of two arcs, counted over skis first, extra arcs after, with its text. */
  readonly miss?: { readonly from: number; readonly to: number; readonly label?: string } | null;
  /** 1 turns to the skier's right (default), −1 to the left. */
  readonly turn?: 1 | -1;
  /** Angle the first ski's arc turns through, rad; default 100°. The arcs are never longer than 40 m. */
  readonly sweep?: number;
  /** Speed along the arc when played, m/s; default 8. */
  readonly speed?: number;
  /** Multiplies bend and twist as drawn; default 1, true. */
  readonly exaggeration?: number;
  /** Unit of the lengths along the first arc seen; metres when absent. */
  readonly lengthsIn?: ArcUnit;
  /** Lean ψ of the plain figure, rad; absent or null shows none. */
  readonly lean?: number | null;
}

export type EdgeCamera = 'ski' | 'along' | 'side' | 'above' | 'arc' | 'hill';

const EDGE_CAMERAS: readonly EdgeCamera[] = ['ski', 'along', 'side', 'above', 'arc', 'hill'];

const LONGEST = 40;
const GROOVE_STEP = 0.2;

/** Ski tipped in the snow, the arc it carves drawn to scale, and the carving of that arc. */
export class EdgeScene implements SetUp<EdgeSceneInput, EdgeCamera> {
  readonly root = new Group();
  readonly labels = new LabelSet(this.root);
  readonly playback = new Playback();
  readonly cameras = EDGE_CAMERAS;
  readonly shadowCentre = new Vector3();
  readonly shadowReach = 2.2;
  frame = new SlopeFrame(evenGround(0.25));
  readonly #view: RibbonView;
  readonly #surface = new SnowSurface();
  readonly #skier = new Skier();
  readonly #arcs: EdgeArcs;
  #skis: { object: SkiObject; groove: Groove; form: SkiForm; style: PairStyle; drawn: number }[] = [];
  #paths: ArcPath[] = [];
  #input: EdgeSceneInput | null = null;
  #theme: SceneTheme = THEMES.snow;
  #surfaceKey = '';
  #started = false;
  readonly #at: PlanePoint = { x: 0, y: 0, heading: 0 };
  #extent: ArcExtent = { left: 0, right: 0, top: 0, bottom: 0, points: [] };
  readonly #forward = new Vector3();
  readonly #inside = new Vector3();
  readonly #normal = new Vector3();
  readonly #boot = new Vector3();
  readonly #leanUp = new Vector3();

  constructor(view: RibbonView) {
    this.#view = view;
    this.#arcs = new EdgeArcs(this.labels, view);
    this.#skier.group.visible = false;
    this.root.add(this.#surface.group, this.#skier.group, this.#arcs.group);
  }

  get snow() {
    return this.#surface.piste;
  }

  /** @throws RangeError when there is no ski, more than two, or an edge angle outside 0 to 90° */
  update(input: EdgeSceneInput): void {
    if (input.skis.length < 1 || input.skis.length > 2) {
      throw new RangeError(`skis: ${input.skis.length} found; one or two are accepted`);
    }
    for (const ski of input.skis) {
      if (!(ski.edgeAngle >= 0 && ski.edgeAngle < Math.PI / 2)) {
        throw new RangeError(`edgeAngle: ${ski.edgeAngle} rad found; 0 to below π/2 is accepted`);
      }
    }
    if (!this.#input || input.slopeAngle !== this.#input.slopeAngle) {
      this.frame = new SlopeFrame(evenGround(input.slopeAngle));
      this.#surfaceKey = '';
    }
    this.#input = input;
    this.#layPaths(input);
    this.#laySkis(input);
    this.#layArcs(input);
    this.#laySnow();
    this.playback.setDuration(this.#paths[0].length / Math.max(0.1, input.speed ?? 8));
    if (!this.#started) {
      // The first picture shows the middle of the turn: groove behind, arc ahead.
      this.#started = true;
      this.playback.seek(this.playback.duration / 2);
    }
  }

  refresh(): void {
    const input = this.#input;
    if (!input) return;
    const travelled = this.playback.time * Math.max(0.1, input.speed ?? 8);
    const turn = input.turn ?? 1;
    for (let i = 0; i < this.#skis.length; i++) {
      const part = this.#skis[i];
      const spec = input.skis[i];
      const at = pointOnArc(this.#paths[i], travelled, this.#at);
      const place = part.object.at;
      place.x = at.x;
      place.y = at.y;
      // The tail slides out: the ski points into the turn by the angle at which its edge slips.
      place.axis = at.heading + turn * (spec.slip ?? 0);
      place.edge = turn * spec.edgeAngle;
      place.depth = bootDepth(spec.bend, spec.form);
      part.object.place(this.frame);
      this.#carve(i, travelled);
      if (i > 0) continue;
      this.frame.place(at.x, at.y, 0, this.#boot);
      this.frame.direct(Math.sin(at.heading), Math.cos(at.heading), 0, at.y, this.#forward);
      this.frame.direct(turn * Math.cos(at.heading), -turn * Math.sin(at.heading), 0, at.y, this.#inside);
      this.frame.direct(0, 0, 1, at.y, this.#normal);
      this.shadowCentre.copy(this.#boot);
      const lean = input.lean ?? null;
      this.#skier.group.visible = lean !== null;
      this.labels.keepClear(lean === null ? [] : this.#skier.points);
      if (lean !== null) {
        this.#leanUp.copy(this.#normal).multiplyScalar(Math.cos(lean));
        this.#leanUp.addScaledVector(this.#inside, Math.sin(lean));
        this.#skier.pose(part.object.seat.origin, part.object.seat.up, this.#leanUp, this.#forward);
      }
    }
  }

  applyTheme(theme: SceneTheme): void {
    this.#theme = theme;
    this.#surface.applyTheme(theme);
    this.#skier.setColours(theme.figure, theme.sideways);
    for (const part of this.#skis) part.groove.setColour(theme.groove);
    if (this.#input) this.#layArcs(this.#input);
  }

  pose(camera: EdgeCamera, aspect: number, out: CameraPose): void {
    const length = this.#input ? this.#input.skis[0].form.length : 1.6;
    out.fov = 30;
    out.target.copy(this.#boot).addScaledVector(this.#normal, 0.08);
    const set = (forward: number, inside: number, normal: number) =>
      out.direction
        .copy(this.#forward)
        .multiplyScalar(forward)
        .addScaledVector(this.#inside, inside)
        .addScaledVector(this.#normal, normal);
    const tall = this.#skier.group.visible;
    switch (camera) {
      case 'ski':
        set(-0.85, 0.9, 0.4);
        // The near half takes more of the picture than the far one.
        out.target.addScaledVector(this.#forward, -0.02 * length).addScaledVector(this.#normal, -0.03);
        out.wide = length * 1.1;
        out.high = length * 0.5;
        break;
      case 'along':
        // Far off through a long lens, so that tip and tail are seen at nearly one size.
        set(1, 0.04, 0.22);
        out.fov = 11;
        out.wide = 1.1;
        out.high = 0.88;
        break;
      case 'side':
        set(0.12, 1, 0.16);
        out.wide = length * 1.2;
        out.high = length * 0.6;
        break;
      case 'above':
        set(0, 0, 1);
        out.target.addScaledVector(this.#forward, length * 0.06);
        out.wide = length * 1.2;
        out.high = length * 1.24;
        break;
      default:
        if (camera === 'arc') out.direction.copy(this.#normal);
        else this.frame.direct(0.5, 0.75, 0.62, 0, out.direction);
        framePoints(this.#extent.points, aspect, out);
        return;
    }
    if (tall) {
      out.target.addScaledVector(this.#normal, 0.55).addScaledVector(this.#inside, 0.35);
      out.wide *= 1.3;
      out.high = Math.max(out.high, 2.5);
    }
  }

  insetFor(camera: EdgeCamera): EdgeCamera {
    return camera === 'arc' || camera === 'hill' ? 'ski' : 'arc';
  }

  coarsen(): void {
    this.#surface.coarsen();
  }

  detailLabels(camera: EdgeCamera): boolean {
    return camera === 'arc' || camera === 'hill';
  }

  dispose(): void {
    for (const part of this.#skis) this.#drop(part);
    this.#arcs.dispose();
    this.#surface.dispose();
    this.#skier.dispose();
    this.labels.dispose();
  }

  #layPaths(input: EdgeSceneInput): void {
    const turn = input.turn ?? 1;
    const first = input.skis[0].turnRadius;
    const sweep = input.sweep ?? 100 * DEGREE;
    const length = Math.min(LONGEST, Math.max(2, first * sweep));
    // The first ski passes the fall line half-way through its arc.
    const heading = (-turn * length) / first / 2;
    const radii = [...input.skis.map(s => s.turnRadius), ...(input.extraArcs ?? []).map(a => a.turnRadius)];
    this.#paths = radii.map(radius => ({ startX: 0, startY: 0, heading, radius, turn, length }));
    this.#extent = arcExtent(this.#paths, this.frame);
  }

  #laySkis(input: EdgeSceneInput): void {
    input.skis.forEach((spec, i) => {
      let part = this.#skis[i];
      const same =
        part &&
        part.form === spec.form &&
        part.style.colour === spec.style.colour &&
        part.style.letter === spec.style.letter;
      if (!same) {
        if (part) this.#drop(part);
        const object = new SkiObject(spec.form, spec.style, i > 0);
        const groove = new Groove(this.#view, 260);
        groove.setColour(this.#theme.groove);
        this.root.add(object.group, groove.mesh);
        part = { object, groove, form: spec.form, style: spec.style, drawn: 0 };
        this.#skis[i] = part;
      }
      const bend = spec.bend ?? rigidSnowBend(spec.form, spec.edgeAngle);
      part.object.setBend(bend, input.turn ?? 1, input.exaggeration ?? 1);
      part.groove.ribbon.clear();
      part.drawn = 0;
    });
    while (this.#skis.length > input.skis.length) this.#drop(this.#skis.pop()!);
  }

  #drop(part: { object: SkiObject; groove: Groove }): void {
    this.root.remove(part.object.group, part.groove.mesh);
    part.object.dispose();
    part.groove.dispose();
  }

  #layArcs(input: EdgeSceneInput): void {
    const drawn = [
      ...input.skis.map(ski => ({
        style: ski.style,
        text: ski.label ?? `${ski.style.letter}  ${ski.turnRadius.toFixed(1)} m`,
        shown: ski.arcShown ?? true,
      })),
      ...(input.extraArcs ?? []).map(arc => ({ style: arc.style, text: arc.label, shown: true })),
    ];
    this.#arcs.lay(this.#paths, drawn, input.lengthsIn ?? 'm', this.frame, this.#theme);
    this.#arcs.layMiss(this.#paths, input.miss ?? null, this.frame, this.#theme);
  }

  #laySnow(): void {
    const { left, right, top, bottom } = this.#extent;
    const reach = (v: number) => Math.ceil(Math.abs(v) / 6) * 6 + 12;
    const extent = {
      left: -reach(left),
      right: reach(right),
      top: -reach(top) - 6,
      bottom: reach(bottom) + 24,
      beyond: 150,
    };
    const key = Object.values(extent).join();
    if (key === this.#surfaceKey) return;
    this.#surfaceKey = key;
    this.#surface.setExtent(extent, this.frame);
  }

  /** Brings the groove of ski i to where the ski is; only what is new is added. */
  #carve(i: number, travelled: number): void {
    const part = this.#skis[i];
    const spec = this.#input!.skis[i];
    const steps = Math.floor(travelled / GROOVE_STEP);
    if (steps < part.drawn) {
      part.groove.ribbon.clear();
      part.drawn = 0;
    }
    const depth = Math.max(bootDepth(spec.bend, spec.form), 0.004);
    const sin = Math.max(Math.sin(spec.edgeAngle), 0.08);
    // The shelf the base has cut, and the snow thrown up on either side of it.
    const slip = spec.slip ?? 0;
    // Its ends slip at twice the mean angle: so wide it sweeps.
    const swept = 2 * part.object.ski.bootHalfWidth + spec.form.contactLength * Math.sin(2 * slip);
    const width =
      slip > 0 ? Math.max(0.22, swept) : Math.min(2 * part.object.ski.bootHalfWidth, depth / sin) + 0.06;
    for (; part.drawn <= steps; part.drawn++) {
      const p = pointOnArc(this.#paths[i], part.drawn * GROOVE_STEP, this.#at);
      part.groove.ribbon.add({ x: p.x, y: p.y, width, depth, kind: slip > 0 ? 'skid' : 'carve' }, this.frame);
    }
  }
}
