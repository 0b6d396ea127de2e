import { randomUUID } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** The part of a bundler's plugin that is needed here; Vite's and Rollup's both fit. */
interface BundlePlugin {
  readonly name: string;
  generateBundle(options: { dir?: string }, bundle: Record<string, { moduleIds?: readonly string[] }>): void;
}

/**
 * Notes which packages went into a bundle, as a JSON list of their folders in `folder`: what is shipped is what
 * owes its licence, whatever the list of dependencies says.
 */
export function noteBundledPackages(folder: string): BundlePlugin {
  return {
    name: 'note-bundled-packages',
    generateBundle(_options, bundle) {
      const packages = new Set<string>();
      for (const { moduleIds = [] } of Object.values(bundle)) {
        for (const id of moduleIds) {
          const found = packageOf(id);
          if (found) packages.add(found);
        }
      }
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, `${randomUUID()}.json`), JSON.stringify([...packages].sort()));
    },
  };
}

/** The folder of the package that a module belongs to; null for a module of our own or of the bundler. */
export function packageOf(moduleId: string): string | null {
  const path = moduleId.replace(/^\0/, '').replace(/\?.*$/, '').replaceAll('\\', '/');
  return /^(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? null;
}
