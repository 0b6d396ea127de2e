import type { PlainKey } from '../../core/language/index.ts';

/** Every key of the app, as the help panel lists them. The frame's keys are in frame/keys.ts. */
export const KEYS: readonly {
  readonly title: PlainKey;
  readonly keys: readonly (readonly [key: PlainKey, meaning: PlainKey])[];
}[] = [
  {
    title: 'help.anywhere',
    keys: [
      ['help.key.digits', 'help.does.questions'],
      ['help.key.letters', 'help.does.activate'],
      ['help.key.slash', 'help.does.find'],
      ['help.key.u', 'help.does.units'],
      ['help.key.l', 'help.does.look'],
      ['help.key.f6', 'help.does.region'],
      ['help.key.f9', 'help.does.board'],
      ['help.key.question', 'help.does.help'],
    ],
  },
  {
    title: 'help.filesAndSteps',
    keys: [
      ['help.key.undo', 'help.does.undo'],
      ['help.key.redo', 'help.does.redo'],
      ['help.key.new', 'help.does.new'],
      ['help.key.open', 'help.does.open'],
      ['help.key.recent', 'help.does.recent'],
      ['help.key.save', 'help.does.save'],
      ['help.key.saveAs', 'help.does.saveAs'],
      ['help.key.print', 'help.does.sheet'],
    ],
  },
  {
    title: 'help.controls',
    keys: [
      ['help.key.arrows', 'help.does.step'],
      ['help.key.ends', 'help.does.ends'],
      ['help.key.escape', 'help.does.cursorOff'],
      ['help.key.enter', 'help.does.working'],
    ],
  },
  {
    title: 'help.tables',
    keys: [
      ['help.key.slash', 'help.does.search'],
      ['help.key.upDown', 'help.does.neighbour'],
      ['help.key.page', 'help.does.ten'],
      ['help.key.ends', 'help.does.firstLast'],
      ['help.key.space', 'help.does.choose'],
      ['help.key.enter', 'help.does.edit'],
      ['help.key.delete', 'help.does.remove'],
    ],
  },
  {
    title: 'help.squadOnly',
    keys: [
      ['help.key.enterHeading', 'help.does.sort'],
      ['help.key.paste', 'help.does.paste'],
      ['help.key.enterTune', 'help.does.log'],
    ],
  },
];
