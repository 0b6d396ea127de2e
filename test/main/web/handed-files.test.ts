import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { arrival } from '../../../main/host/messages.ts';
import { readHanded } from '../../../main/web/handed-files.ts';

test('each file comes whole or with the reason why it does not, in the order given', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'turnwright-handed-'));
  const path = (name: string) => join(folder, name);
  await writeFile(path('larch.pair.json'), '{"name":"Lärche"}');
  await writeFile(path('old.csv'), Buffer.from([0x6c, 0xe4, 0x72]));
  await writeFile(path('old.pair.json'), Buffer.from([0x6c, 0xe4, 0x72]));
  const handed = await readHanded([
    path('larch.pair.json'),
    path('none.pair.json'),
    folder,
    path('old.csv'),
    path('old.pair.json'),
  ]);
  for (const each of handed) expect(arrival.safeParse(each).success).toBe(true);
  const reported = handed.map(each => (each.ok ? `${each.file.name}: ${each.file.text}` : each.message));
  expect(reported[0]).toBe('larch.pair.json: {"name":"Lärche"}');
  expect(reported[1]).toBe(`none.pair.json could not be found in ${folder}.`);
  expect(reported[2]).toMatch(/is a folder; give a file/);
  expect(reported[3]).toBe('old.csv: lär');
  expect(reported[4]).toBe('old.pair.json is not UTF-8 text.');
});
