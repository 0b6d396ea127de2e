import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ensureBuilt, projectRoot } from './build.ts';

// `npm run package -- --linux` and so on: whatever follows is electron-builder's.
ensureBuilt(console.log);
const builder = join(projectRoot, 'node_modules/electron-builder/cli.js');
const { status } = spawnSync(process.execPath, [builder, ...process.argv.slice(2)], {
  cwd: projectRoot,
  stdio: 'inherit',
});
process.exitCode = status ?? 1;
