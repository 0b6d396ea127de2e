import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

const mimeTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.ttf': 'font/ttf',
};

export interface PageFile {
  readonly mime: string;
  readonly bytes: Buffer;
}

/**
 * Reads one of the page's own files, or null. `pathname` is the path of an address, still percent-encoded;
 * whatever leads outside `root` (by dots, an encoded separator or a link) is refused like a missing file.
 */
export async function readPageFile(root: string, pathname: string): Promise<PageFile | null> {
  try {
    const path = decodeURIComponent(pathname);
    if (path.includes('\0') || path.includes('\\') || path.split('/').includes('..')) return null;
    const mime = mimeTypes[extname(path === '/' ? '/index.html' : path)];
    if (!mime) return null;
    const realRoot = await realpath(root);
    const file = await realpath(join(realRoot, path === '/' ? 'index.html' : path));
    if (!file.startsWith(realRoot + sep)) return null;
    return { mime, bytes: await readFile(file) };
  } catch {
    return null;
  }
}
