/** Every key of the app, as the help panel lists them. The frame's keys are in frame/keys.ts. */
export const KEYS: readonly { title: string; keys: readonly (readonly [string, string])[] }[] = [
  {
    title: 'Anywhere (not while typing)',
    keys: [
      ['1 – 5', 'Shape, Flex, Edge, Slope, Set'],
      ['A – D', 'Make that pair the active one'],
      ['/', 'Find a pair in the rack'],
      ['U', 'Switch between metric and imperial'],
      ['L', 'Next look: snow, night, projector'],
      ['F6', 'Next region: questions, rack, stage, readings'],
      ['F9', 'Board, the full-screen teaching mode'],
      ['?', 'This panel'],
    ],
  },
  {
    title: 'Files and steps (Ctrl, or ⌘ on a Mac)',
    keys: [
      ['Ctrl Z', 'Undo'],
      ['Ctrl Shift Z', 'Redo'],
      ['Ctrl N', 'New pair'],
      ['Ctrl O', 'Open pairs and racks'],
      ['Ctrl Shift O', 'Open one of the recent files'],
      ['Ctrl S', 'Save the active pair'],
      ['Ctrl Shift S', 'Save the active pair under another name'],
      ['Ctrl P', 'Sheet of the active pair, as PDF'],
    ],
  },
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
