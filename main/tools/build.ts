import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));
export const builtPage = join(projectRoot, 'build/renderer');
export const builtMain = join(projectRoot, 'build/main/main.js');
const stampFile = join(projectRoot, 'build/stamp');

/**
 * Builds the page, the shell and the preload when any source has changed since the last build.
 *
 * @throws with the bundler's own words when it fails
 */
export function ensureBuilt(say: (line: string) => void): void {
  const stamp = sourceStamp();
  if (stamp === readStamp()) return;
  say('Building the program (a few seconds) …');
  const vite = join(projectRoot, 'node_modules/vite/bin/vite.js');
  const args = [vite, 'build', '--app', '--logLevel', 'warn', '--config', 'renderer/vite.config.ts'];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, {
    cwd: projectRoot,
    encoding: 'utf8',
    // A test run's environment must not reach the build: it has to be the one people get.
    env: { ...process.env, NODE_ENV: 'production', VITEST: undefined },
  });
  if (status !== 0) throw new Error(`The build failed.\n${stdout}${stderr}`);
  mkdirSync(join(projectRoot, 'build'), { recursive: true });
  writeFileSync(stampFile, stamp);
}

/** A digest of everything the build reads; times are left out, so a fresh checkout and a copy agree. */
function sourceStamp(): string {
  const digest = createHash('sha256');
  for (const name of ['package.json', 'package-lock.json'])
    digest.update(readFileSync(join(projectRoot, name)));
  for (const folder of ['core', 'main', 'renderer']) {
    const files = readdirSync(join(projectRoot, folder), { recursive: true, withFileTypes: true })
      .filter(entry => entry.isFile())
      .map(entry => join(entry.parentPath, entry.name))
      .sort();
    for (const file of files) digest.update(file.slice(projectRoot.length)).update(readFileSync(file));
  }
  return digest.digest('hex');
}

function readStamp(): string | null {
  try {
    return readFileSync(stampFile, 'utf8');
  } catch {
    return null;
  }
}
