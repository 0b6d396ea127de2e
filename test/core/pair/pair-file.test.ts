import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkPair,
  type Pair,
  pairJsonSchema,
  readPair,
  skiOf,
  writePair,
} from '../../../core/pair/index.ts';
import published from '../../../core/pair/pair.schema.json' with { type: 'json' };

const larch = {
  format: 'turnwright.pair',
  version: 1,
  name: 'Larch 155',
  discipline: 'SL',
  lengthMm: 1550,
  contactLengthMm: 1360,
  tipWidthMm: 117,
  waistWidthMm: 66,
  tailWidthMm: 104,
  waistFromTailMm: 640,
  camberMm: 8,
  bootCentreFromTailMm: 640,
  massKg: 1.9,
  bending: {
    kind: 'stations',
    stations: [
      { fromTailMm: 0, newtonM2: 40 },
      { fromTailMm: 680, newtonM2: 260 },
    ],
  },
  torsion: { kind: 'formula', newtonM2: '20 + 120*(1-abs(2*s-1)^1.6)' },
  edges: { baseBevelDeg: 0.5, sideAngleDeg: 87 },
  demo: true,
  notes: '',
} as const;

const messages = (change: object): string[] => checkPair({ ...larch, ...change }).map(each => each.message);

describe('reading a pair file', () => {
  it('gives back the whole file, unknown fields included, and writes it in schema order', () => {
    const text = JSON.stringify({ 'x-shop': { shelf: 3 }, ...larch, edges: { ...larch.edges, guard: 'on' } });
    const read = readPair(text);
    if (!read.ok) throw new Error(read.problems[0].message);
    expect(read.pair).toEqual(JSON.parse(text));
    const written = writePair(read.pair);
    expect(JSON.parse(written)).toEqual(JSON.parse(text));
    expect(written.indexOf('"format"')).toBeLessThan(written.indexOf('"name"'));
    expect(written.indexOf('"notes"')).toBeLessThan(written.indexOf('"x-shop"'));
    expect(written.endsWith('}\n')).toBe(true);
    expect(writePair(read.pair)).toBe(written);
  });

  it('accepts the byte order mark some editors put in front', () => {
    expect(readPair(`\ufeff${JSON.stringify(larch)}`).ok).toBe(true);
  });

  it('says where text stops being JSON', () => {
    const read = readPair('{ "format": ');
    expect(read).toMatchObject({ ok: false, problems: [{ field: 'file', accepted: 'JSON text' }] });
  });

  it('refuses nesting that could not be written back', () => {
    const deep = `${'['.repeat(20000)}${']'.repeat(20000)}`;
    expect(readPair(JSON.stringify(larch).replace('""', deep)).ok).toBe(false);
  });

  it('opens a file of a newer version read-only and keeps its version', () => {
    const read = readPair(JSON.stringify({ ...larch, version: 2, rocker: { tip: 1 } }));
    expect(read).toMatchObject({ ok: true, readOnly: true });
    if (read.ok) {
      expect(read.notes[0]).toContain('read-only');
      expect(JSON.parse(writePair(read.pair)).version).toBe(2);
    }
    const strange = readPair(JSON.stringify({ ...larch, version: 2, tipWidthMm: { mm: 117 } }));
    expect(strange).toMatchObject({ ok: false, problems: [{ field: 'version' }, { field: 'tipWidthMm' }] });
  });
});

describe('problems name the field, the value found and what is accepted', () => {
  it.each([
    [
      { waistWidthMm: 130 },
      'waistWidthMm: 130 is wider than tipWidthMm 117; the waist must be the narrowest',
    ],
    [
      { waistWidthMm: 104 },
      'waistWidthMm: 104 is as wide as tailWidthMm 104; the waist must be the narrowest',
    ],
    [{ tipWidthMm: undefined }, 'tipWidthMm: is missing; accepted is a number from 40 to 250 mm'],
    [{ tipWidthMm: '117' }, 'tipWidthMm: "117" is not accepted; accepted is a number from 40 to 250 mm'],
    [{ camberMm: 99 }, 'camberMm: 99 is not accepted; accepted is a number from 0 to 40 mm'],
    [{ name: '  ' }, 'name: "  " is not accepted; accepted is text of 1 to 120 characters'],
    [{ discipline: 'XC' }, 'discipline: "XC" is not accepted; accepted is SL, GS, SG, DH or other'],
    [{ format: 'other' }, 'format: "other" is not accepted; accepted is "turnwright.pair"'],
    [
      { contactLengthMm: 1550 },
      'contactLengthMm: 1550 is not shorter than lengthMm 1550; the contact length must be the shorter',
    ],
    [
      { waistFromTailMm: 1200 },
      'waistFromTailMm: 1200 is not accepted; accepted is 272 to 1088 mm for contactLengthMm 1360',
    ],
    [
      { bending: { kind: 'guess' } },
      'bending.kind: "guess" is not accepted; accepted is a stiffness { kind, … } with kind uniform, stations, formula or layup',
    ],
    [
      { torsion: { kind: 'formula', newtonM2: '1+'.repeat(101) } },
      /^torsion\.newtonM2: .* accepted is text of 1 to 200 characters$/,
    ],
    [
      { edges: { sideAngleDeg: 3 } },
      'edges.sideAngleDeg: 3 is not accepted; accepted is a number from 80 to 90 degrees',
    ],
  ])('%o', (change, message) => {
    expect(messages(change)).toEqual([
      typeof message === 'string' ? message : expect.stringMatching(message),
    ]);
  });

  it('points into lists', () => {
    const bending = {
      kind: 'stations',
      stations: [
        { fromTailMm: 700, newtonM2: 300 },
        { fromTailMm: 700, newtonM2: 200 },
        { fromTailMm: 1400, newtonM2: 9 },
      ],
    };
    expect(checkPair({ ...larch, bending }).map(each => each.field)).toEqual([
      'bending.stations[1].fromTailMm',
      'bending.stations[2].fromTailMm',
    ]);
    const layer = { material: 'ash', youngsGPa: 12, shearGPa: 1.3, densityGPerCm3: 0.6 };
    const layup = {
      kind: 'layup',
      layers: [
        {
          ...layer,
          thicknessMm: [
            { fromTailMm: 0, thicknessMm: -1 },
            { fromTailMm: 9, thicknessMm: 1 },
          ],
        },
      ],
    };
    expect(checkPair({ ...larch, bending: layup }).map(each => each.field)).toEqual([
      'bending.layers[0].thicknessMm[0].thicknessMm',
    ]);
  });

  it('wants width stations that reach along the edge and narrow between the ends', () => {
    const widthStations = [200, 400, 600, 800, 1000].map(fromTailMm => ({
      fromTailMm,
      widthMm: 70 + fromTailMm / 100,
    }));
    expect(checkPair({ ...larch, widthStations })).toHaveLength(2);
  });

  it('takes fewer than five width stations, keeps them and does not use them', () => {
    const all = [0, 400, 700, 1000].map(fromTailMm => ({ fromTailMm, widthMm: 104, by: 'caliper' }));
    for (let count = 0; count <= 4; count++) {
      const text = JSON.stringify({ ...larch, widthStations: all.slice(0, count) });
      const read = readPair(text);
      if (!read.ok) throw new Error(read.problems[0].message);
      expect(JSON.parse(writePair(read.pair)).widthStations).toEqual(all.slice(0, count));
      const ski = skiOf(read.pair);
      expect([ski.widthStations, ski.unusedWidthStations ?? 0]).toEqual([null, count]);
    }
  });

  it('checks few width stations for range and order all the same', () => {
    const faults = (...stations: [number, number][]) =>
      checkPair({
        ...larch,
        widthStations: stations.map(([fromTailMm, widthMm]) => ({ fromTailMm, widthMm })),
      }).map(each => each.field);
    expect(faults([0, 10])).toEqual(['widthStations[0].widthMm']);
    expect(faults([-1, 100])).toEqual(['widthStations[0].fromTailMm']);
    expect(faults([larch.contactLengthMm + 1, 100])).toEqual(['widthStations[0].fromTailMm']);
    expect(faults([400, 80], [0, 104])).toEqual(['widthStations[1].fromTailMm']);
  });

  it('refuses three widths that would make a ski with no width between them', () => {
    const change = { tipWidthMm: 250, tailWidthMm: 250, waistWidthMm: 35, waistFromTailMm: 280 };
    expect(checkPair({ ...larch, ...change }).map(each => each.field)).toEqual(['waistFromTailMm']);
  });
});

describe('a damaged file', () => {
  const keys = Object.keys(larch) as (keyof typeof larch)[];

  it('never throws and never half-loads: it is the whole pair or a list of problems', () => {
    fc.assert(
      fc.property(
        fc.subarray(keys, { minLength: 1 }),
        fc.infiniteStream(fc.jsonValue({ maxDepth: 3 })),
        (fields, values) => {
          const changed = { ...larch, ...Object.fromEntries(fields.map(key => [key, values.next().value])) };
          const text = JSON.stringify(changed);
          const read = readPair(text);
          if (read.ok) {
            expect(read.pair).toEqual(JSON.parse(text));
            expect(
              Object.values(skiOf(read.pair)).every(value => value !== undefined && !Number.isNaN(value)),
            ).toBe(true);
          } else {
            expect(read.problems.length).toBeGreaterThan(0);
            for (const each of read.problems) expect(each.message.startsWith(`${each.field}: `)).toBe(true);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  it('survives text cut off, doubled or altered anywhere', () => {
    const text = JSON.stringify(larch);
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(text.length), fc.string({ maxLength: 4 }), (from, to, put) => {
        const read = readPair(text.slice(0, from) + put + text.slice(to));
        if (read.ok) expect(checkPair(JSON.parse(writePair(read.pair)))).toEqual([]);
        else expect(read.problems[0].accepted).not.toBe('');
      }),
      { numRuns: 400 },
    );
  });

  it.each([null, [], 3, 'x', true, undefined])('%o is not a pair', value => {
    expect(checkPair(value)[0]).toMatchObject({ field: 'file', accepted: 'a JSON object' });
  });
});

describe('what only the control and the technician ask for', () => {
  const control = {
    developedLengthMm: 1560,
    tailToWaistMm: 700,
    frontWidthMm: 104,
    rearWidthMm: 96.5,
    waistWidthMm: 66,
  };
  const stated = {
    ...larch,
    owner: 'An invented junior',
    control,
    standingHeightMm: 49,
    bootSoleHeightMm: 42,
  };

  it('is kept on saving, each in its place, also when half of it is still missing', () => {
    const written = writePair(stated as unknown as Pair);
    const read = readPair(written);
    expect(read).toMatchObject({ ok: true, pair: stated });
    const half = { ...stated, control: { developedLengthMm: 1560, later: 'kept' } };
    expect(readPair(JSON.stringify(half))).toMatchObject({ ok: true, pair: half });
  });

  it('holds at most two further readings, each as far as it was taken', () => {
    const repeats = [
      { ...control, frontWidthMm: 103.8 },
      { developedLengthMm: 1561, later: 'kept' },
    ];
    const three = { ...stated, control: { ...control, repeats } };
    expect(readPair(writePair(three as unknown as Pair))).toMatchObject({ ok: true, pair: three });
    const wrong = (further: unknown) =>
      checkPair({ ...stated, control: { ...control, repeats: further } })[0];
    expect(wrong([{}, {}, {}])).toMatchObject({
      field: 'control.repeats',
      accepted: 'a list of 0 to 2 further readings',
    });
    expect(wrong([{}, 12])).toMatchObject({ field: 'control.repeats[1]' });
    expect(wrong([{ rearWidthMm: 20 }]).message).toMatch(
      /control\.repeats\[0\]\.rearWidthMm: 20 .* 40 to 250 mm/,
    );
    expect(wrong([{}, { ...control, waistWidthMm: 110 }]).message).toMatch(
      /control\.repeats\[1\]\.waistWidthMm: 110 is not narrower than control\.repeats\[1\]\.frontWidthMm 104/,
    );
  });

  it.each([
    [{ owner: 7 }, 'owner', /owner: 7 is not accepted; accepted is text of at most 120 characters/],
    [{ control: 30 }, 'control', /accepted is a control measurement \{ developedLengthMm\?/],
    [{ control: { ...control, frontWidthMm: '104' } }, 'control.frontWidthMm', /a number from 40 to 250 mm/],
    [{ control: { ...control, tailToWaistMm: 1600 } }, 'control.tailToWaistMm', /1600 is not on a ski of/],
    [
      { control: { ...control, waistWidthMm: 97 } },
      'control.waistWidthMm',
      /97 is not narrower than control.rear/,
    ],
    [{ standingHeightMm: 500 }, 'standingHeightMm', /accepted is a number from 10 to 120 mm/],
    [{ bootSoleHeightMm: 0 }, 'bootSoleHeightMm', /accepted is a number from 10 to 120 mm/],
  ])('is refused where it cannot be: %o', (change, field, message) => {
    const [problem] = checkPair({ ...stated, ...change });
    expect(problem.field).toBe(field);
    expect(problem.message).toMatch(message);
  });
});

describe('one ski in SI units', () => {
  it('converts every field', () => {
    const read = readPair(JSON.stringify({ ...larch, bootSoleMm: 290 }));
    if (!read.ok) throw new Error('larch must read');
    const ski = skiOf(read.pair);
    expect(ski).toMatchObject({ discipline: 'SL', mass: 1.9, widthStations: null, torsion: larch.torsion });
    expect(ski.contactLength).toBeCloseTo(1.36, 12);
    expect(ski.waistStation).toBeCloseTo(0.64, 12);
    expect(ski.soleLength).toBeCloseTo(0.29, 12);
    expect(ski.sideAngle).toBeCloseTo((87 * Math.PI) / 180, 12);
    expect(ski.bending).toMatchObject({
      kind: 'stations',
      stations: [{ x: 0, newtonM2: 40 }, { newtonM2: 260 }],
    });
  });

  it('fills in the defaults of the file format', () => {
    const { format, version, name, lengthMm, contactLengthMm, tipWidthMm, waistWidthMm, tailWidthMm } = larch;
    const least = {
      format,
      version,
      name,
      lengthMm,
      contactLengthMm,
      tipWidthMm,
      waistWidthMm,
      tailWidthMm,
    } as Pair;
    expect(checkPair(least)).toEqual([]);
    const ski = skiOf(least);
    expect(ski).toMatchObject({
      discipline: 'other',
      waistStation: null,
      camber: 0,
      mass: null,
      bending: null,
      torsion: null,
    });
    expect(ski.bootCentre).toBeCloseTo(0.47 * 1.36, 12);
    expect(ski.soleLength).toBeCloseTo(0.3, 12);
    expect(ski.baseBevel).toBe(0);
    expect(ski.sideAngle).toBeCloseTo(Math.PI / 2, 12);
  });

  it('turns a layup into SI', () => {
    const layers = [
      {
        material: 'aluminium',
        thicknessMm: 0.5,
        youngsGPa: 71.7,
        shearGPa: 26.9,
        densityGPerCm3: 2.8,
        widthShare: 0.9,
      },
      {
        material: 'ash',
        thicknessMm: [
          { fromTailMm: 0, thicknessMm: 3 },
          { fromTailMm: 640, thicknessMm: 10 },
        ],
        youngsGPa: 12,
        shearGPa: 1.31,
        densityGPerCm3: 0.6,
      },
    ];
    const pair = { ...larch, bending: { kind: 'layup', layers } };
    expect(checkPair(pair)).toEqual([]);
    const bending = skiOf(pair as unknown as Pair).bending;
    if (bending?.kind !== 'layup') throw new Error('a layup must stay one');
    const [metal, wood] = bending.layup.layers;
    expect(metal.youngs).toBeCloseTo(71.7e9, 0);
    expect(metal).toMatchObject({ thickness: 0.0005, widthShare: 0.9, density: 2800 });
    expect(wood.widthShare).toBe(1);
    expect(wood.thickness).toEqual([
      { x: 0, thickness: 0.003 },
      { x: 0.64, thickness: 0.01 },
    ]);
  });
});

describe('the published schema', () => {
  // After a change of the schema, write it anew:
  // npx tsx -e "import('./core/pair/index.ts').then(p => console.log(JSON.stringify(p.pairJsonSchema(), null, 2)))" > core/pair/pair.schema.json
  // npx biome format --write core/pair/pair.schema.json
  it('is the one the program reads by', () => {
    expect(published).toEqual(pairJsonSchema());
    expect(published.required).toEqual([
      'format',
      'version',
      'name',
      'lengthMm',
      'contactLengthMm',
      'tipWidthMm',
      'waistWidthMm',
      'tailWidthMm',
    ]);
  });
});
