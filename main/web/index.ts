/** The built page on its way to a window: served to this machine only, and the browser to show it. */
export { openBrowserWindow } from './browser-window.ts';
export { safeHeaders } from './content-policy.ts';
export { findBrowser } from './find-browser.ts';
export { readHanded } from './handed-files.ts';
export { readPageFile } from './page-files.ts';
export { type PageServer, servePage } from './serve.ts';
