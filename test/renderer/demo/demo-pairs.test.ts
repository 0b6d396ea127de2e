import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { readPair, readRack, skiOf, writePair, writeRack } from '../../../core/pair/index.ts';
import { sidecut } from '../../../core/shape/index.ts';
import { demoPairs, demoRack } from '../../../renderer/demo/index.ts';

const folder = new URL('../../../renderer/demo/', import.meta.url);
const files = readdirSync(folder).filter(file => file.endsWith('.pair.json'));

// Radii of the kind race skis of each discipline have; children's slalom pairs are shorter and tighter.
const radiusRange = { SL: [9.5, 14], GS: [24, 33], SG: [33, 50], DH: [45, 60], other: [12, 20] } as const;

describe('demo pairs', () => {
  it('are all on the rack', () => {
    expect(demoPairs.map(pair => pair.id).sort()).toEqual(
      files.map(file => file.replace('.pair.json', '')).sort(),
    );
  });

  it.each(files)('%s reads, is marked demo and has a radius of its discipline', file => {
    const read = readPair(readFileSync(new URL(file, folder), 'utf8'));
    if (!read.ok) throw new Error(read.problems.map(each => say(each)).join('\n'));
    expect(read).toMatchObject({ readOnly: false, pair: { demo: true } });
    expect(read.pair.notes).toContain('Invented');
    expect(JSON.parse(writePair(read.pair))).toEqual(read.pair);
    const ski = skiOf(read.pair);
    const [least, most] = radiusRange[ski.discipline];
    const { radius, waistStation } = sidecut(ski);
    expect(radius).toBeGreaterThan(least);
    expect(radius).toBeLessThan(most);
    expect(Math.abs(waistStation / ski.contactLength - 0.45)).toBeLessThan(0.06);
    expect(ski.bending).not.toBeNull();
    expect(ski.torsion).not.toBeNull();
  });

  it('make a rack that survives saving', () => {
    const read = readRack(writeRack(demoRack));
    expect(read).toMatchObject({ ok: true, problems: [], readOnly: false });
    if (read.ok) expect(read.rack).toEqual(demoRack);
  });
});
