import { identify } from '../../core/kind/index.ts';
import { isSkisName, openedExtensions } from './extensions.ts';

/** What a person can drop, by name; and what every JSON file of ours says of itself. */
const NAMES = new RegExp(`\\.(${openedExtensions.join('|')})$`, 'i');
const OURS = /"format"\s*:\s*"turnwright\./;

/** Whether a name is one that a dropped file of ours may have. */
export const isDroppableName = (name: string): boolean => NAMES.test(name);

/** Whether a text holds one of the kinds of file a person can drop. */
export function isDroppable(text: string, name: string): boolean {
  return identify(text, name).ok && (!isSkisName(name) || OURS.test(text));
}
