import type { PairStyle, SkiForm } from '../../scene/index.ts';
import { type PairMark, perPair, ski } from '../../state/index.ts';
import { halfOutline } from '../shape/outline.ts';

/** A pair as the scene draws it; one object a pair, so that the scene rebuilds only what changed. */
export const formOf = perPair((pair): SkiForm => {
  const { contactLength, length, bootCentre, soleLength } = ski(pair);
  const { x, y } = halfOutline(pair);
  return { x, halfWidth: y, contactLength, length, bootCentre, soleLength };
});

/** Lengths drawn and left out on the snow, m: the pairs' dashes at the scale of a hill. */
const DASHES: Readonly<Record<PairMark['letter'], readonly number[]>> = {
  A: [],
  B: [0.6, 0.28],
  C: [0.16, 0.24],
  D: [0.66, 0.24, 0.14, 0.24],
};

const colours = new Map<string, string>();

/** A theme's colour as the drawing surface needs it, read from the page once: asking works out every style. */
export function pageColour(name: string): string {
  const root = document.documentElement;
  const key = `${root.dataset.theme} ${name}`;
  const colour = colours.get(key) ?? getComputedStyle(root).getPropertyValue(name).trim();
  colours.set(key, colour);
  return colour;
}

export function styleOf({ letter, colour }: PairMark): PairStyle {
  return { letter, colour: pageColour(colour.slice(4, -1)), dash: DASHES[letter] };
}
