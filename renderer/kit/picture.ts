import { t } from '../state/index.ts';
import { textWidth } from './text-width.ts';

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

/** Height of the line over the drawing, px. */
const HEAD = 28;

/** Over the drawing: what it shows at the left, whose it is at the right. */
export interface Heading {
  readonly title: string;
  readonly pairs: string;
}

/** The drawing as a stand-alone SVG file: colours resolved, controls left out, heading and ground added. */
export function toSvg(svg: SVGSVGElement, { title, pairs }: Heading): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  paint(svg, copy);
  for (const control of copy.querySelectorAll('[data-control]')) control.remove();
  const { width, height } = svg.getBoundingClientRect();
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height + HEAD));
  copy.setAttribute('viewBox', `0 ${-HEAD} ${width} ${height + HEAD}`);
  const name = document.createElementNS('http://www.w3.org/2000/svg', 'title');
  name.textContent = title;
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  ground.setAttribute('y', String(-HEAD));
  ground.setAttribute('width', '100%');
  ground.setAttribute('height', '100%');
  ground.setAttribute('fill', getComputedStyle(document.body).backgroundColor);
  copy.prepend(name, ground);
  const { color, fontFamily } = getComputedStyle(document.body);
  const line = (text: string, x: number, anchor: string, weight: string) => {
    const element = document.createElementNS('http://www.w3.org/2000/svg', 'text');
    const paint = { fill: color, 'font-family': fontFamily, 'font-size': '13px', 'font-weight': weight };
    for (const [key, value] of Object.entries({ x, y: 18 - HEAD, 'text-anchor': anchor, ...paint }))
      element.setAttribute(key, String(value));
    element.textContent = text;
    copy.append(element);
  };
  line(title, 8, 'start', '600');
  // Names that would run into the title are left to the letters.
  if (textWidth(title, 13, 600) + textWidth(pairs, 13) + 32 < width) line(pairs, width - 8, 'end', '400');
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
export async function toPng(svg: SVGSVGElement, heading: Heading, scale = 2): Promise<Uint8Array> {
  const { width, height } = svg.getBoundingClientRect();
  const address = URL.createObjectURL(new Blob([toSvg(svg, heading)], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width * scale);
    canvas.height = Math.round((height + HEAD) * scale);
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>(resolve => canvas.toBlob(resolve, 'image/png'));
    if (!blob) throw new Error(t('kit.tooLargePicture'));
    return new Uint8Array(await blob.arrayBuffer());
  } finally {
    URL.revokeObjectURL(address);
  }
}
