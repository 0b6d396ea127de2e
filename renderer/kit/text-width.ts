interface Look {
  /** The theme it was read in. */
  readonly theme: string | undefined;
  /** Size of small text, px. */
  readonly small: number;
  readonly family: string;
}

let context: CanvasRenderingContext2D | null | undefined;
let look: Look | null = null;

/**
 * The page's type as it stands, read once a theme and window size: asking makes the browser work out every
 * style, and a drag redraws many charts in a frame.
 */
function currentLook(): Look {
  const { theme } = document.documentElement.dataset;
  if (look && look.theme === theme) return look;
  if (look === null) window.addEventListener('resize', forget, { once: true });
  const root = getComputedStyle(document.documentElement);
  const share = Number.parseFloat(root.getPropertyValue('--text-small') || '0.8125');
  look = {
    theme,
    small: Number.parseFloat(root.fontSize) * share,
    family: getComputedStyle(document.body).fontFamily,
  };
  return look;
}

const forget = () => {
  look = null;
};

/** Width of `text` in the page's own font, px. Where nothing can be measured, a usual share of the size. */
export function textWidth(text: string, size: number, weight = 400): number {
  if (context === undefined) {
    context = typeof document === 'undefined' ? null : document.createElement('canvas').getContext('2d');
  }
  if (!context) return text.length * size * 0.56;
  context.font = `${weight} ${size}px ${currentLook().family}`;
  return context.measureText(text).width;
}

/** Size of small text in the current look, px; 13 where there is no page. */
export function smallText(): number {
  return typeof document === 'undefined' ? 13 : currentLook().small;
}
