// @module-tag slow
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { ensureBuilt, noticesFile, projectRoot } from '../../../main/tools/index.ts';

// The builder's own parts are found from the builder, whatever else is installed beside it.
const from = (name: string, path: string) => createRequire(createRequire(path).resolve(name));
const builder = createRequire(import.meta.url).resolve('electron-builder/package.json');
const require = from('app-builder-lib/package.json', builder);
const { load } = require('js-yaml') as { load(text: string): unknown };
// The builder's own check, the same that runs before packaging; it needs no network.
const { validateConfiguration } = require('./out/util/config/config.js') as {
  validateConfiguration(config: object, log: object): Promise<void>;
};
const log = { add: () => {}, isEnabled: false };

let config: Record<string, unknown> & { electronFuses: object; files: string[] };
beforeEach(() => {
  config = load(readFileSync(join(projectRoot, 'electron-builder.yml'), 'utf8')) as typeof config;
});

test('the installer configuration fits the builder’s schema', async () => {
  await expect(validateConfiguration(structuredClone(config), log)).resolves.toBeUndefined();
});

test('the check notices an unknown field', async () => {
  const wrong = { ...structuredClone(config), electronFuse: {} };
  await expect(validateConfiguration(wrong, log)).rejects.toThrow(/electronFuse/);
});

test('the fuses close the ways around the program', () => {
  expect(config.electronFuses).toEqual({
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
  });
});

test('only the built program is packed', () => {
  expect(config.files).toEqual([
    'package.json',
    'build/main/**',
    'build/preload/**',
    'build/renderer/**',
    '!node_modules',
  ]);
});

test('packed over a stub of the runtime, the program and its licences are there and nothing else', async () => {
  ensureBuilt(() => {});
  const folder = mkdtempSync(join(tmpdir(), 'turnwright-packed-'));
  const runtime = join(folder, 'runtime');
  mkdirSync(runtime);
  for (const file of ['electron', 'version', 'LICENSE', 'LICENSES.chromium.html']) {
    writeFileSync(join(runtime, file), '', { mode: 0o755 });
  }
  // The stub has no fuses to set; where it lies and where to pack are all that differs otherwise.
  const { electronFuses: _, ...rest } = config;
  const given = {
    ...rest,
    electronDist: runtime,
    directories: { output: folder, buildResources: 'main/electron' },
  };
  const configFile = join(folder, 'builder.json');
  writeFileSync(configFile, JSON.stringify(given));
  const cli = createRequire(import.meta.url).resolve('electron-builder/cli.js');
  const packing = spawn(process.execPath, [cli, '--linux', '--dir', '--config', configFile], {
    cwd: projectRoot,
    stdio: 'ignore',
  });
  expect(await new Promise(resolve => packing.once('close', resolve))).toBe(0);
  const packed = join(folder, 'linux-unpacked');
  const { listPackage } = require('@electron/asar') as { listPackage(path: string): string[] };
  const files = listPackage(join(packed, 'resources/app.asar')).filter(path => /\.\w+$/.test(path));
  const kinds = new Set(files.map(path => path.replace(/-[\w-]{8}(\.\w+)$/, '$1')));
  for (const path of ['/package.json', '/build/main/main.js', '/build/preload/preload.cjs']) {
    expect(kinds).toContain(path);
  }
  expect(kinds).toContain('/build/renderer/index.html');
  expect(files.filter(path => !/^\/(package\.json|build\/(main|preload|renderer)\/)/.test(path))).toEqual([]);
  const beside = (name: string) => readFileSync(join(packed, name), 'utf8');
  expect(beside('THIRD-PARTY-NOTICES.txt')).toBe(readFileSync(noticesFile, 'utf8'));
  expect(beside('LICENSE')).toBe(readFileSync(join(projectRoot, 'LICENSE'), 'utf8'));
});
