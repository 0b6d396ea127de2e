import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { findBrowser } from '../../../main/web/index.ts';

const INSTALL_LIMIT_MS = 300_000;

/** Software WebGL through EGL, no first-run pages and nothing that looks for a network. */
export const browserFlags = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-gl=angle',
  '--use-angle=gl-egl',
  '--ignore-gpu-blocklist',
];

export function launchBrowser(): Promise<Browser> {
  const executablePath = workingBrowser();
  if (!executablePath)
    throw new Error('No browser of the Chromium family was found; `npm test` installs one.');
  return chromium.launch({ executablePath, headless: true, args: browserFlags });
}

/**
 * Finds a browser, installing one where none is: from the system's packages as root, else the one
 * playwright-core brings. Says what it does.
 */
export function ensureBrowser(say: (line: string) => void): void {
  if (workingBrowser()) return;
  const isRoot = process.getuid?.() === 0;
  if (isRoot && existsSync('/usr/bin/apt-get')) {
    say('No browser found: installing chromium with apt-get …');
    install('apt-get', ['update', '-q']);
    install('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium']);
    if (workingBrowser()) return;
  }
  say('No browser found: fetching the one playwright-core brings …');
  const cli = join(dirname(createRequire(import.meta.url).resolve('playwright-core/package.json')), 'cli.js');
  install(process.execPath, [cli, 'install', ...(isRoot ? ['--with-deps'] : []), 'chromium']);
  if (!workingBrowser()) throw new Error('No browser could be installed; install Chromium and try again.');
}

function install(command: string, args: string[]): void {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'], timeout: INSTALL_LIMIT_MS, env });
}

export function workingBrowser(): string | null {
  const fetched = chromium.executablePath();
  const found = [findBrowser(), fetched].filter(path => path !== null && existsSync(path)) as string[];
  // Some systems install a launcher that only says where to get the real browser.
  return found.find(path => spawnSync(path, ['--version'], { timeout: 20_000 }).status === 0) ?? null;
}
