import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

const STEP = 150;

export interface Growing {
  /** How many of the rows to draw. */
  readonly shown: number;
  /** Goes on an element behind the last row: more are drawn once it is scrolled to. */
  readonly end: RefObject<(HTMLLIElement & HTMLParagraphElement) | null>;
}

/** Draws a long list piece by piece, since thousands of rows at once would hold everything up. */
export function useGrowing(count: number): Growing {
  const [limit, setLimit] = useState(STEP);
  const end = useRef<HTMLLIElement & HTMLParagraphElement>(null);
  useEffect(() => {
    if (limit >= count || !end.current) return;
    const watch = new IntersectionObserver(seen => {
      if (seen.some(each => each.isIntersecting)) setLimit(limit + STEP);
    });
    watch.observe(end.current);
    return () => watch.disconnect();
  }, [limit, count]);
  return { shown: Math.min(limit, count), end };
}
