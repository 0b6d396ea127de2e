import { pageActionFor } from '../host/index.ts';
import { modal, perform } from './actions.ts';
import { isTyping } from './typing.ts';

/** Keys of the page itself. Those that the menu shows come through the host. */
export function onFrameKey(event: KeyboardEvent): void {
  if (event.defaultPrevented) return;
  const action = pageActionFor(event);
  if (!action) return;
  // A single sign may be what is being written.
  if (event.key.length === 1 && (isTyping(event.target) || modal())) return;
  if (perform(action.name)) event.preventDefault();
}
