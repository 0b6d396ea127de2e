import { Group } from 'three';
import { ArcLine, type ArcPath, type PlanePoint, pointOnArc } from './arc.ts';
import { LABEL_GAP } from './arc-extent.ts';
import { DETAIL_LAYER, type Label, type LabelSet } from './label.ts';
import type { RibbonView } from './ribbon-material.ts';
import type { PairStyle } from './ski-object.ts';
import type { SlopeFrame } from './slope-frame.ts';
import type { SceneTheme } from './theme.ts';

/** One arc to draw: how it looks and what stands at its end. */
export interface DrawnArc {
  readonly style: PairStyle;
  readonly text: string;
  readonly shown: boolean;
}

/** How lengths are told along an arc: distance between strokes, m, and how many of the unit that is. */
const MEASURES = { m: { stroke: 1, units: 1 }, ft: { stroke: 3 * 0.3048, units: 3 } } as const;
export type ArcUnit = keyof typeof MEASURES;

const HALF_WIDTH = 0.005;
/** Length, m, beyond which every tenth stroke is told instead of every fifth. */
const FAR = 24;

/** The arcs of the edge scene with their labels, strokes with lengths on the first seen, and the line of a missed guess. */
export class EdgeArcs {
  readonly group = new Group();
  readonly #labels: LabelSet;
  readonly #view: RibbonView;
  readonly #missLine: ArcLine;
  readonly #missLabel: Label;
  readonly #lengthLabels: readonly Label[];
  readonly #arcs: { line: ArcLine; label: Label }[] = [];
  readonly #at: PlanePoint = { x: 0, y: 0, heading: 0 };

  constructor(labels: LabelSet, view: RibbonView) {
    this.#labels = labels;
    this.#view = view;
    this.#missLine = new ArcLine(view);
    this.#missLine.mesh.visible = false;
    this.#missLabel = labels.make();
    this.#lengthLabels = [labels.make(DETAIL_LAYER), labels.make(DETAIL_LAYER)];
    this.group.add(this.#missLine.mesh);
  }

  lay(
    paths: readonly ArcPath[],
    drawn: readonly DrawnArc[],
    unit: ArcUnit,
    frame: SlopeFrame,
    theme: SceneTheme,
  ): void {
    while (this.#arcs.length < drawn.length) {
      const line = new ArcLine(this.#view);
      this.group.add(line.mesh);
      this.#arcs.push({ line, label: this.#labels.make() });
    }
    const measure = MEASURES[unit];
    // The first arc to be seen is the one with lengths along it.
    const measured = drawn.findIndex(arc => arc.shown);
    this.#arcs.forEach(({ line, label }, i) => {
      const arc = drawn[i];
      line.mesh.visible = arc?.shown ?? false;
      if (!arc?.shown) {
        label.set('', theme.ink, theme);
        return;
      }
      const { colour, dash } = arc.style;
      line.set(
        paths[i],
        { colour, dash, halfWidth: HALF_WIDTH, strokes: i === measured ? measure.stroke : 0, spokes: false },
        frame,
      );
      line.setLeastWidth(3 * theme.emphasis);
      label.set(arc.text, colour, theme);
      const end = pointOnArc(paths[i], paths[i].length + LABEL_GAP, this.#at);
      frame.place(end.x, end.y, 0.1, label.sprite.position);
    });
    this.#lengthLabels.forEach((label, i) => {
      const path = paths[measured];
      const strokes = (path && path.length > FAR ? 10 : 5) * (i + 1);
      const along = strokes * measure.stroke;
      const shown = path !== undefined && along < path.length - 1.5;
      label.set(shown ? `${strokes * measure.units} ${unit}` : '', theme.frame, theme);
      if (!shown) return;
      const p = pointOnArc(path, along, this.#at);
      const inside = 0.9 * path.turn;
      const x = p.x + inside * Math.cos(p.heading);
      frame.place(x, p.y - inside * Math.sin(p.heading), 0.05, label.sprite.position);
    });
  }

  /** Straight line between the ends of two arcs; null, or ends that meet, shows none. */
  layMiss(
    paths: readonly ArcPath[],
    miss: { readonly from: number; readonly to: number; readonly label?: string } | null,
    frame: SlopeFrame,
    theme: SceneTheme,
  ): void {
    this.#missLine.mesh.visible = false;
    this.#missLabel.set('', theme.ink, theme);
    const a = miss ? paths[miss.from] : undefined;
    const b = miss ? paths[miss.to] : undefined;
    if (!miss || !a || !b) return;
    const { x: startX, y: startY } = pointOnArc(a, a.length, this.#at);
    const { x, y } = pointOnArc(b, b.length, this.#at);
    const length = Math.hypot(x - startX, y - startY);
    if (length < 0.01) return;
    const heading = Math.atan2(x - startX, y - startY);
    const line: ArcPath = { startX, startY, heading, radius: Number.POSITIVE_INFINITY, turn: 1, length };
    const colour = theme.ink;
    this.#missLine.mesh.visible = true;
    this.#missLine.set(line, { colour, dash: [], halfWidth: 0.012, strokes: 0, spokes: false }, frame);
    this.#missLine.setLeastWidth(2.5 * theme.emphasis);
    this.#missLabel.set(miss.label ?? `${length.toFixed(1)} m`, colour, theme);
    frame.place((startX + x) / 2, (startY + y) / 2 - 0.9, 0.1, this.#missLabel.sprite.position);
  }

  dispose(): void {
    for (const { line } of this.#arcs) line.dispose();
    this.#missLine.dispose();
  }
}
