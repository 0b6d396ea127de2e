const colours = new Map<string, string>();

/**
 * A colour of the present look as a drawing surface needs it, by its custom property (`--ink`). Read from the page
 * once a look: asking works out every style.
 */
export function pageColour(name: string): string {
  const root = document.documentElement;
  const key = `${root.dataset.theme} ${name}`;
  const colour = colours.get(key) ?? getComputedStyle(root).getPropertyValue(name).trim();
  colours.set(key, colour);
  return colour;
}
