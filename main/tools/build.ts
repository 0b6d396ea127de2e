import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { say } from '../host/index.ts';
import { bundledPackages, noticesText } from './notices.ts';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));
export const builtPage = join(projectRoot, 'build/renderer');
export const builtMain = join(projectRoot, 'build/main/main.js');
/** Licence texts of everything that was bundled; the page shows its own copy. */
export const noticesFile = join(projectRoot, 'build/THIRD-PARTY-NOTICES.txt');
const bundledFolder = join(projectRoot, 'build/bundled');
const stampFile = join(projectRoot, 'build/stamp');

/**
 * Builds the page, the shell and the preload when any source has changed since the last build.
 *
 * @throws with the bundler's own words when it fails
 */
export function ensureBuilt(print: (line: string) => void): void {
  const stamp = sourceStamp();
  if (stamp === readStamp()) return;
  print(say({ key: 'start.building' }));
  rmSync(bundledFolder, { recursive: true, force: true });
  const vite = join(projectRoot, 'node_modules/vite/bin/vite.js');
  const args = [vite, 'build', '--app', '--logLevel', 'warn', '--config', 'renderer/vite.config.ts'];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, {
    cwd: projectRoot,
    encoding: 'utf8',
    // A test run's environment must not reach the build: it has to be the one people get.
    env: { ...process.env, NODE_ENV: 'production', VITEST: undefined },
  });
  if (status !== 0) throw new Error(`${say({ key: 'start.buildFailed' })}\n${stdout}${stderr}`);
  writeFileSync(noticesFile, noticesText(bundledPackages(bundledFolder)));
  copyFileSync(noticesFile, join(builtPage, 'third-party-notices.txt'));
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
