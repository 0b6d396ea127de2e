import { chmod, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { createDocuments } from '../../../main/electron/documents.ts';

let folder: string;
let own: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'turnwright-documents-'));
  own = join(folder, 'own');
});

async function file(name: string, content: string | Uint8Array) {
  const path = join(folder, name);
  await writeFile(path, content);
  return path;
}

describe('recent files', () => {
  test('come back after a restart, latest first, tables and gates not among them', async () => {
    const documents = createDocuments(own);
    await documents.open(await file('ash.pair.json', '{}'), 'skis');
    await documents.open(await file('squad.csv', 'name\n'), 'table');
    await documents.open(await file('beech.pair.json', '{}'), 'skis');
    const recent = await createDocuments(own).recent();
    expect(recent.map(each => each.name)).toEqual(['beech.pair.json', 'ash.pair.json']);
    expect(recent[0].folder).toBe(folder);
  });

  test('one that has gone says so by name and folder, and the others still open', async () => {
    const documents = createDocuments(own);
    const path = await file('ash.pair.json', '{"ash":1}');
    const ash = await documents.open(path);
    const beech = await documents.open(await file('beech.pair.json', '{"beech":1}'));
    await rm(path);
    await expect(documents.reopen(ash.token)).rejects.toThrow(
      `ash.pair.json could not be found in ${folder}.`,
    );
    expect((await documents.reopen(beech.token)).text).toBe('{"beech":1}');
    expect(await documents.recent()).toHaveLength(2);
  });

  test('a damaged list costs the list, not the start', async () => {
    const documents = createDocuments(own);
    await documents.open(await file('ash.pair.json', '{}'));
    await writeFile(join(own, 'recent.json'), '{"half":');
    expect(await createDocuments(own).recent()).toEqual([]);
  });

  test('lists twelve, and saves to the thirteenth after a restart all the same', async () => {
    const documents = createDocuments(own);
    const first = await documents.open(await file('first.pair.json', '{}'));
    for (let at = 0; at < 12; at++) await documents.open(await file(`${at}.pair.json`, '{}'));
    const again = createDocuments(own);
    expect((await again.recent()).map(each => each.name)).not.toContain('first.pair.json');
    await again.save(first.token, '{"saved":1}');
    expect(await readFile(join(folder, 'first.pair.json'), 'utf8')).toBe('{"saved":1}');
  });
});

describe('saving', () => {
  test('leaves a file alone that was changed by something else, and takes it when opened again', async () => {
    const path = await file('ash.pair.json', 'one');
    const documents = createDocuments(own);
    const { token } = await documents.open(path);
    await documents.save(token, 'two');
    await writeFile(path, 'from elsewhere');
    await expect(documents.save(token, 'three')).rejects.toThrow(/changed by something else/);
    expect(await readFile(path, 'utf8')).toBe('from elsewhere');
    await documents.reopen(token);
    await documents.save(token, 'three');
    expect(await readFile(path, 'utf8')).toBe('three');
  });

  test('knows after a restart too that a file was changed meanwhile', async () => {
    const path = await file('ash.pair.json', 'one');
    const { token } = await createDocuments(own).open(path);
    await writeFile(path, 'from elsewhere');
    await expect(createDocuments(own).save(token, 'two')).rejects.toThrow(/changed by something else/);
  });

  test('a file that was deleted is written anew', async () => {
    const path = await file('ash.pair.json', 'one');
    const documents = createDocuments(own);
    const { token } = await documents.open(path);
    await rm(path);
    await documents.save(token, 'two');
    expect(await readFile(path, 'utf8')).toBe('two');
  });

  test('a file marked read-only and a folder that is gone are refused in plain words', async () => {
    const path = await file('ash.pair.json', 'one');
    const documents = createDocuments(own);
    const { token } = await documents.open(path);
    await chmod(path, 0o444);
    await expect(documents.save(token, 'two')).rejects.toThrow(
      'ash.pair.json could not be written: the file is marked read-only',
    );
    expect(await readFile(path, 'utf8')).toBe('one');
    await expect(documents.saveAs(join(folder, 'gone', 'x.pair.json'), '{}')).rejects.toThrow(
      'x.pair.json could not be written: the folder is no longer there',
    );
  });
});

describe('saves asked for at once', () => {
  test('follow each other, none mistaking the one before for a change from elsewhere', async () => {
    const path = await file('ash.pair.json', 'one');
    const documents = createDocuments(own);
    const { token } = await documents.open(path);
    await Promise.all(['a', 'b', 'c', 'd'].map(text => documents.save(token, text)));
    expect(await readFile(path, 'utf8')).toBe('d');
    expect(await readFile(`${path}.bak`, 'utf8')).toBe('c');
  });
});

describe('the draft', () => {
  test('of the first versions is read as it was, and kept beside the new one', async () => {
    await mkdir(own);
    await writeFile(join(own, 'draft.json'), '{"version":1}');
    const documents = createDocuments(own);
    expect(await documents.readDraft()).toEqual({ whole: '{"version":1}' });
    await documents.writeDraft({ rest: '{}' });
    expect(await createDocuments(own).readDraft()).toEqual({ rest: '{}' });
    expect(await readFile(join(own, 'draft.json.bak'), 'utf8')).toBe('{"version":1}');
  });

  test('that cannot be read is told, not taken for none', async () => {
    await mkdir(join(own, 'draft.journal'), { recursive: true });
    await expect(createDocuments(own).readDraft()).rejects.toThrow('a folder has that name');
  });
});

describe('bytes', () => {
  test('a table in an old encoding is read and says so, a pair file is refused', async () => {
    const latin = new Uint8Array([0x6e, 0x2c, 0xe9]);
    const documents = createDocuments(own);
    const table = await documents.open(await file('squad.csv', latin), 'table');
    expect(table.text).toBe('n,é');
    expect(table.note).toContain('not UTF-8');
    await expect(documents.open(await file('ash.pair.json', latin), 'skis')).rejects.toThrow(
      'ash.pair.json is not UTF-8 text.',
    );
  });
});
