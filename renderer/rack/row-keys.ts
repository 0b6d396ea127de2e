const PAGE = 10;

/**
 * Up and down, Page up and down, Home and End go from name to name; up from the first goes to the search
 * field. For the rack and the squad's table alike.
 *
 * @param row selects the element of one pair
 * @param name selects, inside it, what takes the focus
 * @param drawAll draws the rows of a long list that are not drawn yet, before End
 */
export function moveAmongRows(event: KeyboardEvent, row: string, name: string, drawAll: () => void): void {
  const list = event.currentTarget as HTMLElement;
  const drawn = () => [...list.querySelectorAll<HTMLElement>(name)];
  const names = drawn();
  const own = (event.target as HTMLElement).closest(row);
  const at = names.findIndex(each => own?.contains(each));
  const last = names.length - 1;
  const steps: Record<string, number> = {
    ArrowDown: Math.min(last, at + 1),
    ArrowUp: at - 1,
    PageDown: Math.min(last, at + PAGE),
    PageUp: Math.max(0, at - PAGE),
    Home: 0,
  };
  if (event.key === 'End') {
    event.preventDefault();
    drawAll();
    requestAnimationFrame(() => drawn().at(-1)?.focus());
    return;
  }
  const next = steps[event.key];
  if (next === undefined) return;
  event.preventDefault();
  if (next < 0) document.getElementById('rack-search')?.focus();
  else names[next]?.focus();
}

/** Down from the search field goes to the first name. */
export function enterRows(event: KeyboardEvent, name: string): void {
  if (event.key !== 'ArrowDown') return;
  document.querySelector<HTMLElement>(name)?.focus();
  event.preventDefault();
}

/** Removes the pair of the row in focus; the focus goes on to the row that comes into its place. */
export function removeRow(event: KeyboardEvent, row: string, name: string, remove: () => void): void {
  const own = (event.target as HTMLElement).closest(row);
  const list = own?.parentElement;
  const names = () => [...(list?.querySelectorAll<HTMLElement>(name) ?? [])];
  const at = names().findIndex(each => own?.contains(each));
  remove();
  requestAnimationFrame(() => {
    const left = names();
    (left[Math.min(at, left.length - 1)] ?? document.getElementById('rack-search'))?.focus();
  });
}
