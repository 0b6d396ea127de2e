import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { file, larch, run } from './drive.ts';

const folder = await mkdtemp(join(tmpdir(), 'turnwright-encodings-'));
const put = async (name: string, bytes: Uint8Array) => {
  const path = join(folder, name);
  await writeFile(path, bytes);
  return path;
};
const wide = (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le');
const western = (text: string) => Buffer.from(text, 'latin1');

const gates = 'gate;across;down;Bemerkung\n1;2;12\n2;-2;24;größer\n3;2;36\n';
const pair = JSON.stringify({ ...larch, name: 'Lärche' });

describe('the command line decodes as the page does', () => {
  test('gates in UTF-16 and in Windows-1252, and says what it took for granted', async () => {
    const plain = await run(['set', file, '--json', '--course', await put('plain.csv', Buffer.from(gates))]);
    expect(plain).toMatchObject({ code: 0, err: '' });
    for (const [name, bytes, reported] of [
      ['wide.csv', wide(gates), 'Read as UTF-16 text.'],
      ['western.csv', western(gates), 'read as Western European text'],
    ] as const) {
      const path = await put(name, bytes);
      const { code, out, err } = await run(['set', file, '--json', '--course', path]);
      expect(code).toBe(0);
      expect(err).toContain(`${path}: `);
      expect(err).toContain(reported);
      expect(out).toBe(plain.out);
    }
  });

  test('a pair in UTF-16, of a file and on standard input', async () => {
    const path = await put('laerche.pair.json', wide(pair));
    for (const each of [
      await run(['shape', path, '--json']),
      await run(['shape', '-', '--json'], wide(pair)),
    ]) {
      expect(each.code).toBe(0);
      expect(JSON.parse(each.out).name).toBe('Lärche');
      expect(each.err).toMatch(/: Read as UTF-16 text\.\n$/);
    }
  });

  test('a pair in another encoding is refused by name, wherever it comes from', async () => {
    const path = await put('alt.pair.json', western(pair));
    expect(await run(['shape', path])).toEqual({ code: 2, out: '', err: `${path}: is not UTF-8 text\n` });
    expect(await run(['shape', '-'], western(pair))).toEqual({
      code: 2,
      out: '',
      err: 'standard input: is not UTF-8 text\n',
    });
    const workbook = await put('squad.xlsx', Uint8Array.of(0x50, 0x4b, 3, 4, 0xff, 0));
    expect((await run(['set', file, '--course', workbook])).err).toContain('is a workbook, not text');
  });
});
