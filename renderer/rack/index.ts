/** The rack at the side, the form of a pair, and what the rack may lay over the page. */
import './rack.css';

export { remove, toggle } from './choosing.ts';
export { demoEntries } from './demo-rack.ts';
export { RackDialogs } from './dialogs.tsx';
export { useGrowing } from './growing.ts';
export { Message } from './message.tsx';
export { textOf } from './pair-draft.ts';
export { FIELD_GROUPS, fieldLabel, type NumberField, otherwiseText } from './pair-fields.ts';
export { editPair, newPair } from './pair-form-host.tsx';
export { RackPanel } from './rack-panel.tsx';
export { showRecent } from './recent-list.tsx';
export { enterRows, moveAmongRows, removeRow } from './row-keys.ts';
