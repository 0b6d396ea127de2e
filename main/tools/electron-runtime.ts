import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { say } from '../host/index.ts';

const FETCH_LIMIT_SECONDS = 120;
const RETRY_AFTER_MS = 24 * 3600 * 1000;

// Only the manifest is resolved: loading the package itself would start a download.
const manifest = () => createRequire(import.meta.url).resolve('electron/package.json');

/** The Electron executable when its runtime is there and of the installed version, else null. */
export function findElectron(environment: NodeJS.ProcessEnv = process.env): string | null {
  try {
    const packageFolder = dirname(manifest());
    const { version } = JSON.parse(readFileSync(manifest(), 'utf8'));
    const folder = environment.ELECTRON_OVERRIDE_DIST_PATH ?? join(packageFolder, 'dist');
    const found = readFileSync(join(folder, 'version'), 'utf8').trim().replace(/^v/, '');
    const executable = join(folder, readFileSync(join(packageFolder, 'path.txt'), 'utf8').trim());
    return found === version && existsSync(executable) ? executable : null;
  } catch {
    return null;
  }
}

/**
 * Fetches the runtime through the package's own installer, as a child that is ended at the time limit.
 * A failure is noted in `noteFile`, so that the next starts of the day do not wait for it again.
 */
export async function fetchElectron(noteFile: string, print: (line: string) => void): Promise<boolean> {
  if (isRecent(noteFile)) return false;
  print(say({ key: 'start.fetching', values: { seconds: FETCH_LIMIT_SECONDS } }));
  const child = spawn(process.execPath, [join(dirname(manifest()), 'install.js')], { stdio: 'ignore' });
  const started = Date.now();
  const progress = setInterval(() => print(`  ${Math.round((Date.now() - started) / 1000)} s …`), 15_000);
  const limit = setTimeout(() => child.kill('SIGKILL'), FETCH_LIMIT_SECONDS * 1000);
  const code = await new Promise<number | null>(resolve => {
    child.once('error', () => resolve(null));
    child.once('exit', resolve);
  });
  clearInterval(progress);
  clearTimeout(limit);
  if (code === 0 && findElectron()) return true;
  mkdirSync(dirname(noteFile), { recursive: true });
  writeFileSync(noteFile, `${say({ key: 'start.notFetched' })}\n`);
  return false;
}

function isRecent(file: string): boolean {
  try {
    return Date.now() - statSync(file).mtimeMs < RETRY_AFTER_MS;
  } catch {
    return false;
  }
}
