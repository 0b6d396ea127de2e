import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Opens `address` as a window of its own. The window has its own profile folder, so the child lives exactly
 * as long as the window: with a person's usual profile it would hand over to a running browser and end.
 *
 * @param lasting keep the profile, and with it the recent files and the draft, for the next start
 */
export function openBrowserWindow(browser: string, address: string, lasting: boolean): ChildProcess {
  const profile = lasting ? lastingProfile(browser) : mkdtempSync(join(tmpdir(), 'turnwright-'));
  mkdirSync(profile, { recursive: true });
  const flags = [
    `--app=${address}`,
    `--user-data-dir=${profile}`,
    '--window-size=1360,880',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-quic',
    // Chromium refuses its sandbox to the root user; --test-type spares that user the warning bar.
    ...(process.getuid?.() === 0 ? ['--no-sandbox', '--test-type'] : []),
  ];
  // In a group of its own: Ctrl+C in the terminal would otherwise end the window before its work is down.
  return spawn(browser, flags, { stdio: 'ignore', detached: process.platform !== 'win32' });
}

function lastingProfile(browser: string): string {
  const home = homedir();
  if (process.platform === 'darwin') return join(home, 'Library/Application Support/Turnwright/browser');
  if (process.platform === 'win32') {
    return join(process.env.LOCALAPPDATA ?? join(home, 'AppData/Local'), 'Turnwright/browser');
  }
  // A browser installed as a snap can only write under its own folder.
  if (browser.startsWith('/snap/')) return join(home, 'snap/chromium/common/turnwright');
  return join(process.env.XDG_DATA_HOME ?? join(home, '.local/share'), 'turnwright/browser');
}
