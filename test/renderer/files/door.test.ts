import { beforeEach, describe, expect, it } from 'vitest';
import { rackOf, writePair, writeRack } from '../../../core/pair/index.ts';
import { season2024 } from '../../../core/rules/index.ts';
import { edition } from '../../../renderer/answers/index.ts';
import { flexSheet, importFile, looking, nextSheet, openFiles } from '../../../renderer/files/index.ts';
import type { FileKind } from '../../../renderer/host/index.ts';
import {
  activePair,
  changeView,
  course,
  EMPTY_PROJECT,
  load,
  project,
  readingsOf,
  slope,
  status,
  unsavedEntries,
  view,
} from '../../../renderer/state/index.ts';
import { plainPair } from '../plain-pair.ts';

interface File {
  readonly token: string;
  readonly name: string;
  readonly text: string;
}

/** The files a person picks whatever is asked for, and what was asked. */
let picked: readonly File[] = [];
const request: FileKind[] = [];
Object.assign(globalThis, {
  window: {
    turnwrightHost: {
      kind: 'desktop',
      open: async (kind: FileKind) => {
        request.push(kind);
        return picked;
      },
    },
  },
});

const open = async (...files: File[]) => {
  picked = files;
  await openFiles();
};
const file = (name: string, text: string): File => ({ token: name, name, text });
const names = () => project.value.rack.map(entry => entry.pair.name);

const texts = {
  pair: file('ash.pair.json', writePair(plainPair('Ash'))),
  rack: file('squad.rack.json', writeRack(rackOf('', [plainPair('Beech')]))),
  edition: file('club.json', JSON.stringify({ ...season2024, edition: 'Club cup' })),
  gates: file('today.csv', 'gate,across,down\n1,1,10\n2,-1,20\n'),
  bench: file('bench.csv', 'loadAtMm;loadN;dialAtMm;deflectionMm\n300;100;300;5,31\n'),
  slope: file('hill.csv', 'distance,height\n0,0\n50,-10\n100,-22\n'),
  programme: file('turns.csv', 'time,edge\n0,0\n1,60\n2,-60\n'),
  sheet: file('squad.csv', 'name,length,contact length,tip,waist,tail\nLarch,1550,1360,111,66,97\n'),
};

/** Each kind taken in, and where it is found afterwards. */
const arrived: Readonly<Record<keyof typeof texts, () => void>> = {
  pair: () => expect(names()).toEqual(['Ash']),
  rack: () => expect(names()).toEqual(['Beech']),
  edition: () => expect(edition.value.edition).toBe('Club cup'),
  gates: () => {
    expect(course.value).toMatchObject({ name: 'today', gates: [{ y: 10 }, { y: 20 }] });
    expect(view.value.question).toBe('set');
  },
  bench: () => {
    expect(readingsOf(activePair.value!.id).value).toBe(texts.bench.text);
    expect([view.value.question, flexSheet.value]).toEqual(['flex', 'readings']);
  },
  slope: () => {
    expect(slope.value).toMatchObject({ ground: 'file', groundFile: { name: 'hill.csv' } });
    expect(view.value.question).toBe('slope');
  },
  programme: () => {
    expect(slope.value).toMatchObject({ programme: 'file', programmeFile: { name: 'turns.csv' } });
    expect(view.value.question).toBe('slope');
  },
  sheet: () => {
    expect(looking.value?.pairs.map(each => each.pair.name)).toEqual(['Larch']);
    expect(view.value.page).toBe('squad');
  },
};

beforeEach(() => {
  load(EMPTY_PROJECT);
  changeView({ question: 'shape' });
  flexSheet.value = 'stiffness';
  while (looking.value) nextSheet();
  request.length = 0;
  status.value = null;
});

describe.each(Object.keys(texts) as (keyof typeof texts)[])('%s', kind => {
  const came = texts[kind];
  beforeEach(() => {
    if (kind === 'bench') importFile(texts.pair);
  });

  it('is taken in by Open…', async () => {
    await open(came);
    expect(request).toEqual(['any']);
    arrived[kind]();
    expect(status.value?.kind).not.toBe('error');
  });

  it('is taken in dropped or handed over', () => {
    importFile(came);
    arrived[kind]();
  });

  it('is taken in under a name that says nothing', () => {
    importFile({ ...came, name: kind === 'gates' ? 'today' : came.name.replace(/\..*$/, '.txt') });
    if (kind !== 'slope' && kind !== 'programme') arrived[kind]();
    expect(status.value?.kind).not.toBe('error');
  });

  it('is taken in where something else is opened', async () => {
    picked = [came];
    await openFiles(kind === 'sheet' ? 'gates' : 'sheet');
    arrived[kind]();
  });

  it('is taken in when it is pasted and in no file', () => {
    const { text } = came;
    importFile({ name: kind === 'gates' ? 'today' : came.name, text }, 'sheet');
    arrived[kind]();
  });
});

describe('what comes from no file', () => {
  it('is a pair still to be saved', () => {
    importFile({ name: 'pasted rows', text: texts.pair.text });
    expect(project.value.rack[0]).not.toHaveProperty('fileToken');
    expect(unsavedEntries.value.map(each => each.pair.name)).toEqual(['Ash']);
  });

  it('is a rack whose pairs join those there, without a file to be written over', () => {
    importFile({ name: 'pasted rows', text: texts.rack.text });
    expect(project.value.rackFile).toBeNull();
    expect(unsavedEntries.value.map(each => each.pair.name)).toEqual(['Beech']);
  });
});

describe('what is at fault', () => {
  it('is told by the reader of what it says it is', () => {
    importFile(file('bad.json', JSON.stringify({ ...season2024, edition: '', limits: [] })));
    expect(status.value).toEqual({
      kind: 'error',
      text: 'bad.json is no edition of limits. edition: "" is not accepted; accepted is at least one character (and 1 more)',
    });
    importFile(file('hill.csv', 'distance,height\n0,0\n10,steep\n'));
    expect(status.value?.text).toMatch(/^hill\.csv: line 3, .*"steep" is not accepted/);
    expect(slope.value.ground).not.toBe('file');
  });

  it('is told by the reader of what was wanted where it says nothing', () => {
    importFile(file('numbers.csv', 'a,b\n1,2\n'), 'gates');
    expect(status.value?.text).toBe('numbers.csv: no gates found; the set stays as it is');
  });

  it('is told with file, line and value where a slope was wanted, and how many lines more', async () => {
    picked = [file('hill.csv', '0,0\n10,steep\n20,flat\n15,high\n')];
    await openFiles('slope');
    expect(request).toEqual(['table']);
    expect(status.value?.text).toBe(
      'hill.csv: line 2, height (m): "steep" is not accepted; accepted is a number (and 2 more)',
    );
    picked = [file('hill.csv', '0,0\n10,-2\n')];
    await openFiles('slope');
    expect(slope.value).toMatchObject({ ground: 'file', groundFile: { name: 'hill.csv' } });
  });

  it('is told with what was found and what is accepted where nothing was wanted', () => {
    importFile(file('pets.csv', 'cat;dog\n1;2\n'));
    expect(status.value).toEqual({
      kind: 'error',
      text: expect.stringMatching(/^pets\.csv: headings: "cat \| dog" is not accepted; .*gate, across, down/),
    });
    importFile(file('other.json', '{ "format": "other.thing" }'));
    expect(status.value?.text).toMatch(/^other\.json: format: "other\.thing" is not .*turnwright\.rack/);
    expect(project.value.rack).toEqual([]);
  });

  it('is bench readings without a pair in hand', () => {
    importFile(texts.bench);
    expect(status.value?.text).toContain('choose the pair');
  });
});
