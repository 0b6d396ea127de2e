import './tokens.css';
import './base.css';
import './controls.css';
import { effect } from '@preact/signals';
import { view } from '../state/index.ts';

export { pageColour } from './page-colour.ts';

/** Keeps the page's look in step with the project's; returns a function that stops it. */
export function followTheme(): () => void {
  return effect(() => {
    document.documentElement.dataset.theme = view.value.theme;
  });
}
