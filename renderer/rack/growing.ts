import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

const STEP = 150;

export interface Growing {
  /** How many of the rows to draw. */
  readonly shown: number;
  /** Goes on an element behind the last row: more are drawn once it is scrolled to. */
  readonly end: RefObject<(HTMLLIElement & HTMLParagraphElement) | null>;
  /** Draws the rest, for whoever asks for the last row. */
  drawAll(): void;
}

/**
 * Draws a long list piece by piece, since thousands of rows at once would hold everything up.
 *
 * @param count rows there are
 * @param needed index of a row that has to be among those drawn, the pair in hand; -1 for none
 */
export function useGrowing(count: number, needed: number): Growing {
  const [limit, setLimit] = useState(STEP);
  const end = useRef<HTMLLIElement & HTMLParagraphElement>(null);
  const reached = Math.max(limit, Math.ceil((needed + 1) / STEP) * STEP);
  useEffect(() => {
    // What has been drawn stays drawn when another pair is taken in hand.
    if (reached > limit) setLimit(reached);
    if (reached >= count || !end.current) return;
    const watch = new IntersectionObserver(seen => {
      if (seen.some(each => each.isIntersecting)) setLimit(reached + STEP);
    });
    watch.observe(end.current);
    return () => watch.disconnect();
  }, [limit, reached, count]);
  return { shown: Math.min(reached, count), end, drawAll: () => setLimit(count) };
}
