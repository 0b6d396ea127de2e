import { builtinModules } from 'node:module';
import { fileURLToPath } from 'node:url';
import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';
import { noteBundledPackages } from '../main/tools/bundled-packages.ts';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const nodeModules = ['electron', ...builtinModules, ...builtinModules.map(name => `node:${name}`)];

const bundled = at('../build/bundled');

/** One configuration builds the three parts: `client` is the page, `main` the shell, `preload` the seam. */
export default defineConfig({
  root: at('.'),
  base: './',
  plugins: [preact(), noteBundledPackages(bundled)],
  builder: {
    async buildApp(builder) {
      for (const name of ['client', 'main', 'preload']) await builder.build(builder.environments[name]);
    },
  },
  worker: { format: 'es', plugins: () => [noteBundledPackages(bundled)] },
  environments: {
    client: {
      build: {
        outDir: at('../build/renderer'),
        emptyOutDir: true,
        target: 'chrome134',
        // Inlined fonts and pictures would need `data:` in the content policy; files need nothing.
        assetsInlineLimit: 0,
        modulePreload: { polyfill: false },
        chunkSizeWarningLimit: 1500,
      },
    },
    main: {
      consumer: 'server',
      resolve: { noExternal: true, external: ['electron'], builtins: nodeModules },
      build: {
        outDir: at('../build/main'),
        emptyOutDir: true,
        target: 'node20',
        minify: false,
        rolldownOptions: {
          input: {
            main: at('../main/electron/main.ts'),
            'sweep-worker': at('../main/calc/sweep-worker.ts'),
          },
          external: nodeModules,
          output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
        },
      },
    },
    preload: {
      consumer: 'server',
      resolve: { noExternal: true, external: ['electron'], builtins: nodeModules },
      build: {
        outDir: at('../build/preload'),
        emptyOutDir: true,
        target: 'chrome134',
        minify: false,
        rolldownOptions: {
          input: { preload: at('../main/electron/preload.ts') },
          external: nodeModules,
          // A sandboxed preload is always a CommonJS script in one file.
          output: { format: 'cjs', entryFileNames: '[name].cjs', codeSplitting: false },
        },
      },
    },
  },
});
