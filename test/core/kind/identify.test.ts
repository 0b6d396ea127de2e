import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeGates } from '../../../core/course/index.ts';
import { identify, textKinds } from '../../../core/kind/index.ts';
import { rackOf, writeRack } from '../../../core/pair/index.ts';
import { season2024 } from '../../../core/rules/index.ts';

const demo = (name: string) =>
  readFileSync(new URL(`../../../renderer/demo/${name}`, import.meta.url), 'utf8');
const larch = demo('larch-155.pair.json');
const kindOf = (text: string, name?: string) => {
  const found = identify(text, name);
  return found.ok ? found.kind : found;
};

const known = {
  pair: [larch, `\uFEFF${larch}`, '{ "format": "turnwright.pair", '],
  rack: [
    writeRack(rackOf('', [])),
    // A pair inside names its own format before the rack does.
    `{ "pairs": [${larch}], "format": "turnwright.rack", "version": 1 }`,
  ],
  edition: [JSON.stringify(season2024), JSON.stringify({ format: 'turnwright.rules' })],
  gates: [
    'gate,across,down\n1,1,10\n2,-1,20\n',
    '# Pala\n# blue\n#;across;down;turn\n1;2,5;12;left\n',
    'x\ty\n1\t2\n',
    // A set in which no row can be read is still a set, and says row by row why.
    'gate,across,down\n1,wide,far\n',
    writeGates([]),
  ],
  bench: [
    'loadFromTailMm,loadN,dialFromTailMm,deflectionMm\n300,100,300,5\n',
    'loadAtMm;loadN;dialAtMm;deflectionMm\n300;100;300;5,31\n',
  ],
  slope: [
    'distance,height\n# start hut\n0,1820\n',
    'Distance (m);Height (m)\n0;0\n',
    '# Pala\ndistance_m\taltitude\n',
  ],
  programme: ['time,edge\n0,0\n', 't (s);edge angle (°)\n0;0\n', 'timeS,edgeDeg\n0,0\n'],
  sheet: [
    demo('ostrelle-squad.csv'),
    'Winter stock\n\nowner;ski;length (cm);tip\nZoë;Lärche;165;117\n',
    'name,length,contact length,tip,waist,tail\n',
  ],
} as const;

describe('a text is known by what it says of itself', () => {
  test.each(Object.entries(known).flatMap(([kind, texts]) => texts.map(text => [kind, text] as const)))(
    '%s',
    (kind, text) => {
      for (const name of ['', 'pasted rows', 'a.csv', 'notes.txt']) expect(kindOf(text, name)).toBe(kind);
    },
  );

  test('every kind stands among them', () => {
    expect(Object.keys(known)).toEqual([...textKinds]);
  });

  test('its name counts where JSON is too broken to say', () => {
    expect(kindOf('{ nothing', 'squad.rack.json')).toBe('rack');
    expect(kindOf('name,length', 'larch.pair.json')).toBe('pair');
    expect(kindOf('{ nothing')).toBe('pair');
  });

  test('what is none of them says what was found and what is accepted', () => {
    expect(kindOf('{ "format": "other.thing" }')).toEqual({
      ok: false,
      fault: { field: 'format', found: '"other.thing"', accepted: { key: 'kind.formats' } },
    });
    expect(kindOf('[1, 2]', 'a.json')).toMatchObject({ fault: { field: 'format', found: undefined } });
    expect(kindOf('cat;dog\n1;2\n', 'pets.csv')).toEqual({
      ok: false,
      fault: { field: 'headings', found: '"cat | dog"', accepted: { key: 'kind.tables' } },
    });
    // Numbers alone could be ground as well as turns.
    expect(kindOf('0,0\n1,20\n', 'a.csv')).toMatchObject({ fault: { found: '"0 | 0"' } });
    expect(kindOf(' \n')).toMatchObject({ fault: { found: undefined } });
  });
});
