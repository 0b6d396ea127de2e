/** Keys and what they do, under a heading. */
export interface KeyGroup {
  readonly title: string;
  readonly keys: readonly (readonly [key: string, meaning: string])[];
}

/** Keys of controls, as the help panel lists them after those of the actions. */
export const CONTROL_KEYS: readonly KeyGroup[] = [
  {
    title: 'Sliders, handles and charts',
    keys: [
      ['← → ↑ ↓', 'One step; with Shift a fine step'],
      ['Home, End', 'Least and greatest'],
      ['Esc', 'Put the reading cursor away'],
      ['Enter', 'On a reading: show its working'],
    ],
  },
  {
    title: 'In the rack and the squad’s table',
    keys: [
      ['/', 'The search field; ↓ goes on to the pairs'],
      ['↑ ↓', 'Next pair up or down; up from the first to the search field'],
      ['Page ↑ ↓', 'Ten pairs on'],
      ['Home, End', 'First and last pair'],
      ['Space', 'Choose the pair, or let it go'],
      ['Enter', 'Edit the pair'],
      ['Delete', 'Remove the pair (undo brings it back)'],
    ],
  },
  {
    title: 'Squad rack only',
    keys: [
      ['Enter, on a heading', 'Sort by it; again turns the order round; a third time as in the rack'],
      ['Ctrl V', 'Look over rows copied from a spreadsheet'],
      ['Enter, in the tune form', 'Add to the log'],
    ],
  },
];
