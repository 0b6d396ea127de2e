import type { ComponentChildren, JSX } from 'preact';

/** Stands where a drawing would be and says what to do next. */
export function Empty({ children }: { children: ComponentChildren }): JSX.Element {
  return <div class="empty">{children}</div>;
}
