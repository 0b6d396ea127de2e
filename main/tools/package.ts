import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { say } from '../host/index.ts';
import { ensureBuilt, projectRoot } from './build.ts';

const UNREACHED = /\b(ENOTFOUND|EAI_AGAIN|ECONN\w+|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|EPROTO|CERT_\w+)\b/;

/** Hands the builder's lines on without the places in its code, and notices when the network failed it. */
async function relay(from: Readable, to: NodeJS.WritableStream): Promise<boolean> {
  let unreached = false;
  for await (const line of createInterface({ input: from })) {
    unreached ||= UNREACHED.test(line);
    if (!/^\s+at /.test(line)) to.write(`${line.replace(/ (failedTask|stackTrace)=.*/, '')}\n`);
  }
  return unreached;
}

// `npm run package -- --linux` and so on: whatever follows is electron-builder's.
ensureBuilt(console.log);
const builder = join(projectRoot, 'node_modules/electron-builder/cli.js');
const child = spawn(process.execPath, [builder, ...process.argv.slice(2)], {
  cwd: projectRoot,
  stdio: ['inherit', 'pipe', 'pipe'],
});
const ended = new Promise<number>(resolve => child.once('close', code => resolve(code ?? 1)));
const unreached = await Promise.all([
  relay(child.stdout, process.stdout),
  relay(child.stderr, process.stderr),
]);
process.exitCode = await ended;
if (process.exitCode !== 0 && unreached.includes(true)) {
  console.error(say({ key: 'start.noInstaller' }));
}
