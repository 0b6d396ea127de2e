/** Properties that make an SVG look the same away from the page's style sheets. */
const PAINT = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-opacity',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'font-variant-numeric',
  'text-anchor',
  'dominant-baseline',
  'vector-effect',
  'paint-order',
] as const;

/** The drawing as a stand-alone SVG file: colours resolved, controls left out, title and ground added. */
export function toSvg(svg: SVGSVGElement, title: string): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  paint(svg, copy);
  for (const control of copy.querySelectorAll('[data-control]')) control.remove();
  const { width, height } = svg.getBoundingClientRect();
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  const name = document.createElementNS('http://www.w3.org/2000/svg', 'title');
  name.textContent = title;
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  ground.setAttribute('width', '100%');
  ground.setAttribute('height', '100%');
  ground.setAttribute('fill', getComputedStyle(document.body).backgroundColor);
  copy.prepend(name, ground);
  return new XMLSerializer().serializeToString(copy);
}

function paint(from: Element, to: Element): void {
  const style = getComputedStyle(from);
  for (const property of PAINT) {
    const value = style.getPropertyValue(property);
    if (value) to.setAttribute(property, value);
  }
  to.removeAttribute('class');
  to.removeAttribute('style');
  for (let at = 0; at < from.children.length; at++) paint(from.children[at]!, to.children[at]!);
}

/** The drawing as a PNG at `scale` pixels to a CSS pixel. */
export async function toPng(svg: SVGSVGElement, title: string, scale = 2): Promise<Uint8Array> {
  const { width, height } = svg.getBoundingClientRect();
  const address = URL.createObjectURL(new Blob([toSvg(svg, title)], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width * scale);
    canvas.height = Math.round(height * scale);
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>(resolve => canvas.toBlob(resolve, 'image/png'));
    if (!blob) throw new Error('The picture could not be drawn at this size; make the window smaller.');
    return new Uint8Array(await blob.arrayBuffer());
  } finally {
    URL.revokeObjectURL(address);
  }
}
