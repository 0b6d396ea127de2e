// @module-tag slow
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { projectRoot } from '../../../main/tools/index.ts';

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
