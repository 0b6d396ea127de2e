import { useRef, useState } from 'preact/hooks';

/**
 * Holds a value still while the pointer is down on what it is spread on: a scale that followed the drag
 * would pull the grip away from under the hand.
 */
export function useHeld<T>(value: T): [T, { onPointerDownCapture: () => void }] {
  const held = useRef<{ value: T } | null>(null);
  const [, redraw] = useState(0);
  const hold = () => {
    if (held.current) return;
    held.current = { value };
    const release = () => {
      held.current = null;
      window.removeEventListener('pointerup', release);
      window.removeEventListener('pointercancel', release);
      redraw(count => count + 1);
    };
    window.addEventListener('pointerup', release);
    window.addEventListener('pointercancel', release);
  };
  return [held.current ? held.current.value : value, { onPointerDownCapture: hold }];
}
