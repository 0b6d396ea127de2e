import { useLayoutEffect, useRef, useState } from 'preact/hooks';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Size of an element as laid out, kept up to date. Zero until it is first measured. */
export function useSize<E extends Element>(): [{ current: E | null }, Size] {
  const element = useRef<E>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const target = element.current;
    if (!target) return;
    const box = target.getBoundingClientRect();
    setSize({ width: box.width, height: box.height });
    const observer = new ResizeObserver(([entry]) => {
      const { width, height } = entry!.contentRect;
      setSize(known => (known.width === width && known.height === height ? known : { width, height }));
    });
    observer.observe(target);
    return () => observer.disconnect();
  }, []);
  return [element, size];
}
