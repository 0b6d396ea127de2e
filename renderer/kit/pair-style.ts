import type { PairMark } from '../state/index.ts';
import { pageColour } from '../theme/index.ts';

/** A pair's letter, colour and dash as a scene draws them; lengths drawn and left out in m. */
export interface SnowMark {
  readonly letter: PairMark['letter'];
  readonly colour: string;
  readonly dash: readonly number[];
}

/** A px of dash on paper is this much on the snow, m. */
const SNOW_PER_PX = 1 / 15;

/** A pair's mark on the snow: the letter, colour and dash it has everywhere. */
export function styleOf({ letter, colour, dash }: PairMark): SnowMark {
  return {
    letter,
    colour: pageColour(colour.slice('var('.length, -1)),
    dash: dash ? dash.split(' ').map(px => Number(px) * SNOW_PER_PX) : [],
  };
}
