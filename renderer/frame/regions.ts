const REGIONS = ['rail', 'rack', 'stage', 'readings'] as const;

const STOPS = 'button, input, select, textarea, summary, [tabindex="0"]';

/** Whether Tab would stop here: of a group of radios it stops at the chosen one. */
function isStop(element: HTMLElement): boolean {
  if (element.tabIndex < 0 || element.matches(':disabled') || !element.checkVisibility()) return false;
  return !(element instanceof HTMLInputElement && element.type === 'radio') || element.checked;
}

/** The keyboard goes on to the next region of the page, or to the one before. */
export function nextRegion(direction: 1 | -1): void {
  // The squad's page is its own rack; the board has no regions.
  const regions = REGIONS.filter(id => document.getElementById(id));
  if (regions.length === 0) return;
  const within = regions.findIndex(id => document.getElementById(id)?.contains(document.activeElement));
  const next = regions[(within + direction + regions.length) % regions.length]!;
  const region = document.getElementById(next);
  const first =
    region?.querySelector<HTMLElement>('[aria-current="page"]') ??
    [...(region?.querySelectorAll<HTMLElement>(STOPS) ?? [])].find(isStop);
  (first ?? region)?.focus();
}
