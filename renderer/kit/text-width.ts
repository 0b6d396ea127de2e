let context: CanvasRenderingContext2D | null | undefined;

/** Width of `text` in the page's own font, px. Where nothing can be measured, a usual share of the size. */
export function textWidth(text: string, size: number, weight = 400): number {
  if (context === undefined) {
    context = typeof document === 'undefined' ? null : document.createElement('canvas').getContext('2d');
  }
  if (!context) return text.length * size * 0.56;
  context.font = `${weight} ${size}px ${getComputedStyle(document.body).fontFamily}`;
  return context.measureText(text).width;
}

/** Size of small text in the current look, px. */
export function smallText(): number {
  const root = getComputedStyle(document.documentElement);
  return (
    Number.parseFloat(root.fontSize) * Number.parseFloat(root.getPropertyValue('--text-small') || '0.8125')
  );
}
