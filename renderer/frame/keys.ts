import { helpOpen } from '../help/index.ts';
import { activate, adjust, changeView, project, THEMES, view } from '../state/index.ts';
import { views } from '../views/index.ts';

const REGIONS = ['rail', 'rack', 'stage', 'readings'] as const;

/** Whether a key press belongs to something being typed in. */
export function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement)
    return target.type !== 'checkbox' && target.type !== 'radio' && target.type !== 'range';
  return (
    target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable
  );
}

/** Single keys of the frame. Keys with Ctrl or ⌘ come as commands through the host. */
export function onFrameKey(event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
  if (event.key === 'F6') {
    nextRegion(event.shiftKey ? -1 : 1);
    event.preventDefault();
    return;
  }
  if (isTyping(event.target) || document.querySelector('dialog[open]')) return;
  const action = actionFor(event.key);
  if (!action) return;
  event.preventDefault();
  action();
}

function actionFor(key: string): (() => void) | null {
  const place = ['a', 'b', 'c', 'd'].indexOf(key.toLowerCase());
  if (place >= 0) {
    const id = project.value.chosen[place];
    return id ? () => adjust(activate(id)) : null;
  }
  const chosenView = /^[1-5]$/.test(key)
    ? views.find(
        each => each.question === (['shape', 'flex', 'edge', 'slope', 'set'] as const)[Number(key) - 1],
      )
    : undefined;
  if (chosenView) return () => changeView({ question: chosenView.question });
  switch (key) {
    case 'u':
    case 'U':
      return () => changeView({ system: view.value.system === 'metric' ? 'imperial' : 'metric' });
    case 'l':
    case 'L':
      return () => changeView({ theme: THEMES[(THEMES.indexOf(view.value.theme) + 1) % THEMES.length]! });
    case '/':
      return () => document.getElementById('rack-search')?.focus();
    case '?':
      return () => {
        helpOpen.value = true;
      };
    default:
      return null;
  }
}

const STOPS = 'button, input, select, textarea, summary, [tabindex="0"]';

/** Whether Tab would stop here: of a group of radios it stops at the chosen one. */
function isStop(element: HTMLElement): boolean {
  if (element.tabIndex < 0 || element.matches(':disabled') || !element.checkVisibility()) return false;
  return !(element instanceof HTMLInputElement && element.type === 'radio') || element.checked;
}

function nextRegion(direction: 1 | -1): void {
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
