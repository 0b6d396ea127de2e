import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { atomicWrite, openJournal } from '../../main/disk/index.ts';
import { projectRoot } from '../../main/tools/index.ts';

/** `TURNWRIGHT_DISK_KILLS=200` for more. */
const KILLS = Number(process.env.TURNWRIGHT_DISK_KILLS ?? 2);
const LENGTH = 1_500_000;
/** A busy machine takes its time to start a process, ms. */
const PATIENCE = 240_000;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'turnwright-cut-'));
});
afterAll(() => rm(folder, { recursive: true }));

/** A process that writes on and on, each text longer than a disk takes at once, and says each that is down. */
function writer(name: 'atomic-write' | 'journal', source: string): ChildProcess {
  const disk = pathToFileURL(join(projectRoot, `main/disk/${name}.ts`));
  const script = `import * as disk from ${JSON.stringify(disk)};\n${source}`;
  return spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
    cwd: projectRoot,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

/** Kills it once so many are down and a share of the usual time to the next has passed. */
async function killWhileWriting(child: ChildProcess, after: number, share: number): Promise<number> {
  let last = 0;
  let began = 0;
  let said = '';
  await new Promise<void>(resolve => {
    child.stdout!.on('data', chunk => {
      said += chunk;
      last = Number(/(\d+)\n(?:\d*)$/.exec(said)?.[1] ?? 0);
      if (last >= 1 && began === 0) began = performance.now();
      if (last < after) return;
      const each = (performance.now() - began) / Math.max(1, last - 1);
      setTimeout(resolve, share * each);
    });
  });
  child.kill('SIGKILL');
  await once(child, 'exit');
  return Number(/(\d+)\n(?:\d*)$/.exec(said)![1]);
}

test(
  'killed while it writes, a file and its backup are whole: the last write or the one before',
  async () => {
    for (let kill = 0; kill < KILLS; kill++) {
      const path = join(folder, `${kill}.rack.json`);
      const child = writer(
        'atomic-write',
        `
      for (let at = 1; ; at++) {
        await disk.atomicWrite(${JSON.stringify(path)}, String(at).padStart(8, '0') + 'x'.repeat(${LENGTH}), { backup: true });
        console.log(at);
      }`,
      );
      // Seeded, spread over a write.
      const said = await killWhileWriting(child, 3 + (kill % 3), ((kill * 277) % 1000) / 1000);
      const [file, backup] = await Promise.all([readFile(path, 'utf8'), readFile(`${path}.bak`, 'utf8')]);
      for (const text of [file, backup]) {
        expect(text.length).toBe(8 + LENGTH);
        expect(text.slice(8)).toBe('x'.repeat(LENGTH));
      }
      const [written, before] = [Number(file.slice(0, 8)), Number(backup.slice(0, 8))];
      // What was said to be down is down; the one behind it may be too.
      expect(written).toBeGreaterThanOrEqual(said);
      expect(written).toBeLessThanOrEqual(said + 2);
      expect([written, written - 1]).toContain(before);
      // The next write goes on from there.
      await atomicWrite(path, 'after', { backup: true });
      expect(await readFile(path, 'utf8')).toBe('after');
      expect(await readFile(`${path}.bak`, 'utf8')).toBe(file);
      await rm(path);
    }
  },
  PATIENCE,
);

test(
  'killed while it adds to a journal, all that was said to be down is there',
  async () => {
    for (let kill = 0; kill < KILLS / 2; kill++) {
      const path = join(folder, `${kill}.journal`);
      const child = writer(
        'journal',
        `
      const journal = disk.openJournal(${JSON.stringify(path)});
      for (let at = 1; ; at++) {
        await journal.write({ ['pair/' + (at % 5)]: String(at).padEnd(300_000, ' '), last: String(at) });
        console.log(at);
      }`,
      );
      const said = await killWhileWriting(child, 12 + 5 * kill, ((kill * 277) % 1000) / 1000);
      const records = (await openJournal(path).read())!;
      const last = Number(records.last);
      expect(last).toBeGreaterThanOrEqual(said);
      expect(last).toBeLessThanOrEqual(said + 2);
      for (const back of [0, 1, 2, 3, 4]) {
        const at = last - back;
        expect(records[`pair/${at % 5}`]).toBe(String(at).padEnd(300_000, ' '));
      }
    }
  },
  PATIENCE,
);

test('writes of several files at once, some of which fail, follow each other file by file', async () => {
  const paths = ['a', 'b', 'c'].map(name => join(folder, `${name}.json`));
  const locked = join(folder, 'locked.json');
  await writeFile(locked, 'locked');
  await chmod(locked, 0o400);
  const write = fc.record({
    path: fc.constantFrom(...paths, locked),
    long: fc.boolean(),
    backup: fc.boolean(),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(write, { minLength: 2, maxLength: 12 }), async writes => {
      const texts = writes.map(({ long }, at) => `${at}${(long ? 'x' : '').repeat(100_000)}`);
      const done = await Promise.allSettled(
        writes.map(({ path, backup }, at) => atomicWrite(path, texts[at]!, { backup })),
      );
      expect(done.map(({ status }) => status)).toEqual(
        writes.map(({ path }) => (path === locked ? 'rejected' : 'fulfilled')),
      );
      for (const path of paths) {
        const last = writes.findLastIndex(each => each.path === path);
        if (last >= 0) expect(await readFile(path, 'utf8')).toBe(texts[last]);
      }
      expect(await readFile(locked, 'utf8')).toBe('locked');
    }),
    { numRuns: 12, seed: 19 },
  );
  expect((await readdir(folder)).filter(name => name.endsWith('.new') && /[abc]\.json/.test(name))).toEqual(
    [],
  );
});
