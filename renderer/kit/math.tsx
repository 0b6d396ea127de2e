import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import temml from 'temml';

/** TeX as MathML. Built node by node, so the page's content policy needs no exception. */
export function Tex({ tex, display = false }: { tex: string; display?: boolean }): JSX.Element {
  const element = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    if (!element.current) return;
    try {
      temml.render(tex, element.current, { displayMode: display, throwOnError: true, wrap: 'none' });
    } catch {
      // A formula that cannot be set is still readable as it was written.
      element.current.textContent = tex;
    }
  }, [tex, display]);
  return <span ref={element} class={display ? 'math display' : 'math'} />;
}
