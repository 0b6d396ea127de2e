import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const onLinux = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'brave-browser',
  'vivaldi',
];
const onMac = [
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Chromium.app/Contents/MacOS/Chromium',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'Brave Browser.app/Contents/MacOS/Brave Browser',
];
const onWindows = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
  'BraveSoftware\\Brave-Browser\\Application\\brave.exe',
];

/** An installed browser of the Chromium family, or null. `CHROME_PATH` names another. */
export function findBrowser(environment: NodeJS.ProcessEnv = process.env): string | null {
  return candidates(environment).find(isExecutable) ?? null;
}

function candidates(environment: NodeJS.ProcessEnv): string[] {
  const chosen = environment.CHROME_PATH ? [environment.CHROME_PATH] : [];
  const within = (folders: (string | undefined)[], names: string[]) =>
    folders.filter(folder => folder !== undefined).flatMap(folder => names.map(name => join(folder, name)));
  if (process.platform === 'darwin') {
    const own = environment.HOME && join(environment.HOME, 'Applications');
    return [...chosen, ...within(['/Applications', own], onMac)];
  }
  if (process.platform === 'win32') {
    const { LOCALAPPDATA, PROGRAMFILES, 'PROGRAMFILES(X86)': programs86 } = environment;
    return [...chosen, ...within([PROGRAMFILES, programs86, LOCALAPPDATA], onWindows)];
  }
  return [...chosen, ...within((environment.PATH ?? '').split(delimiter).filter(Boolean), onLinux)];
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
