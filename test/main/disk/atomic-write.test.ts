import {
  chmod,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  readlink,
  stat,
  symlink,
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
