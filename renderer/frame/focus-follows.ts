import { useEffect, useRef } from 'preact/hooks';

export type Place = 'questions' | 'squad' | 'compare' | 'board';

const REGIONS = '#rail, #rack, #stage, #readings';

/**
 * Another place takes away what had the focus: a keyboard then starts from nothing. The focus goes on to where
 * the new place begins; from the Board and the squad it goes back to where they were opened.
 */
export function useFocusFollows(place: Place): void {
  const shown = useRef(place);
  const openedFrom = useRef('#board-button');
  // The opener is still there while the Board that takes its place is being made.
  if (place === 'board' && shown.current !== 'board') {
    const region = document.activeElement?.closest(REGIONS);
    openedFrom.current = region ? `#${region.id}` : '#board-button';
  }
  useEffect(() => {
    const came = shown.current;
    shown.current = place;
    const at = document.activeElement;
    if (came === place || (at !== null && at !== document.body)) return;
    const back = came === 'squad' && place === 'questions' ? '#rack' : '#stage';
    const start = place === 'board' ? '.board h1' : came === 'board' ? openedFrom.current : back;
    document.querySelector<HTMLElement>(start)?.focus({ preventScroll: true });
  }, [place]);
}
