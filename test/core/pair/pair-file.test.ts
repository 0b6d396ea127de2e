import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { checkPair, readPair, writePair } from '../../../core/pair/index.ts';
import { larch } from './larch.ts';

describe('reading a pair file', () => {
  it('gives back the whole file, unknown fields included, and writes it in schema order', () => {
    const text = JSON.stringify({ 'x-shop': { shelf: 3 }, ...larch, edges: { ...larch.edges, guard: 'on' } });
    const read = readPair(text);
    if (!read.ok) throw new Error(say(read.problems[0]));
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
    expect(read).toMatchObject({ ok: false, problems: [{ field: 'file', accepted: { key: 'pair.json' } }] });
  });

  it('refuses nesting that could not be written back', () => {
    const deep = `${'['.repeat(20000)}${']'.repeat(20000)}`;
    expect(readPair(JSON.stringify(larch).replace('""', deep)).ok).toBe(false);
  });

  it('opens a file of a newer version read-only and keeps its version', () => {
    const read = readPair(JSON.stringify({ ...larch, version: 2, rocker: { tip: 1 } }));
    expect(read).toMatchObject({ ok: true, readOnly: true });
    if (read.ok) {
      expect(say(read.notes[0]!)).toContain('read-only');
      expect(JSON.parse(writePair(read.pair)).version).toBe(2);
    }
    const strange = readPair(JSON.stringify({ ...larch, version: 2, tipWidthMm: { mm: 117 } }));
    expect(strange).toMatchObject({ ok: false, problems: [{ field: 'version' }, { field: 'tipWidthMm' }] });
  });
});

describe('a damaged file', () => {
  it.each([null, [], 3, 'x', true, undefined])('%o is not a pair', value => {
    expect(checkPair(value)[0]).toMatchObject({ field: 'file', accepted: { key: 'accepted.object' } });
  });
});
