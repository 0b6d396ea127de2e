import { edgeCurve } from '../../../core/shape/index.ts';
import type { PairStyle, SkiForm, ThemeName } from '../../scene/index.ts';
import { type PairMark, perPair, ski, type Theme } from '../../state/index.ts';

const STATIONS = 61;

/** The ski as the scene draws it. */
export const formOf = perPair((pair): SkiForm => {
  const one = ski(pair);
  const edge = edgeCurve(one);
  const x = Float64Array.from({ length: STATIONS }, (_, i) => (i * one.contactLength) / (STATIONS - 1));
  return {
    x,
    halfWidth: x.map(at => edge.halfWidth(at)),
    contactLength: one.contactLength,
    length: one.length,
    bootCentre: one.bootCentre,
    soleLength: one.soleLength,
  };
});

/** A colour of the page's look as the scene needs it: worked out, not by name. */
export function resolvedColour(colour: string): string {
  const name = /^var\((--[\w-]+)\)$/.exec(colour)?.[1];
  return name ? getComputedStyle(document.documentElement).getPropertyValue(name).trim() : colour;
}

/** A pair's mark for lines on the snow: a px of dash on paper is a decimetre there. */
export function styleOf(mark: PairMark): PairStyle {
  return {
    letter: mark.letter,
    colour: resolvedColour(mark.colour),
    dash: mark.dash ? mark.dash.split(' ').map(px => Number(px) / 10) : [],
  };
}

/** The scene's light for each look of the page. */
export const SCENE_THEME: Readonly<Record<Theme, ThemeName>> = {
  snow: 'light',
  night: 'dark',
  projector: 'projector',
};
