import {
  chmod,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  readlink,
  stat,
  symlink,
  utimes,
  writeFile,
} from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { atomicWrite } from '../../../main/disk/atomic-write.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'turnwright-write-'));
});

test('keeps the old content as a backup and leaves nothing else behind', async () => {
  const path = join(folder, 'larch.pair.json');
  await atomicWrite(path, 'one', { backup: true });
  expect(await readdir(folder)).toEqual(['larch.pair.json']);
  await atomicWrite(path, 'two', { backup: true });
  expect(await readFile(path, 'utf8')).toBe('two');
  expect(await readFile(`${path}.bak`, 'utf8')).toBe('one');
  expect((await readdir(folder)).sort()).toEqual(['larch.pair.json', 'larch.pair.json.bak']);
});

test('a failed write leaves the old file whole', async () => {
  const path = join(folder, 'taken');
  await mkdir(path);
  await writeFile(join(path, 'inside'), 'kept');
  await expect(atomicWrite(path, 'new')).rejects.toThrow();
  expect(await readFile(join(path, 'inside'), 'utf8')).toBe('kept');
  expect(await readdir(folder)).toEqual(['taken']);
});

test('keeps the permissions, and writes through a link', async () => {
  const real = join(folder, 'real.json');
  const link = join(folder, 'link.json');
  await writeFile(real, 'one');
  await chmod(real, 0o600);
  await symlink(real, link);
  await atomicWrite(link, 'two');
  expect(await readlink(link)).toBe(real);
  expect(await readFile(real, 'utf8')).toBe('two');
  expect((await stat(real)).mode & 0o777).toBe(0o600);
});

test('of writes asked for at once the last one stands, and its backup is the one before', async () => {
  const path = join(folder, 'race.json');
  for (let race = 0; race < 20; race++) {
    // The first is much longer, so that it would end last if they ran side by side.
    const writes = [3_000_000, 30_000, 3].map((length, at) => `${at}${'x'.repeat(length)}`);
    await Promise.all(writes.map(text => atomicWrite(path, text, { backup: true })));
    expect((await readFile(path, 'utf8')).slice(0, 2)).toBe('2x');
    expect((await readFile(`${path}.bak`, 'utf8')).slice(0, 2)).toBe('1x');
  }
});

test('a write that fails does not hold up the next', async () => {
  const path = join(folder, 'larch.pair.json');
  await writeFile(path, 'one');
  await chmod(path, 0o400);
  const refused = atomicWrite(path, 'two');
  await expect(refused).rejects.toThrow('read-only');
  await chmod(path, 0o600);
  await atomicWrite(path, 'three');
  expect(await readFile(path, 'utf8')).toBe('three');
});

test('sweeps what writes of this file left when they were cut short, and nothing else', async () => {
  const path = join(folder, 'larch.pair.json');
  const id = '01234567-89ab-cdef-0123-456789abcdef';
  const old = [`.larch.pair.json.${id}.new`, `.larch.pair.json.bak.${id}.new`];
  const others = [`.birch.pair.json.${id}.new`, '.larch.pair.json.mine.new', 'notes.new'];
  for (const name of [...old, ...others]) {
    await writeFile(join(folder, name), 'left');
    await utimes(join(folder, name), 0, 0);
  }
  const atWork = `.larch.pair.json.${id.replace('0', 'f')}.new`;
  await writeFile(join(folder, atWork), 'of a write still at work');
  await atomicWrite(path, 'new');
  expect((await readdir(folder)).sort()).toEqual([...others, atWork, 'larch.pair.json'].sort());
});
