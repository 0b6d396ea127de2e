import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot } from '../../main/build.ts';

function start(...options: string[]) {
  const tsx = join(projectRoot, 'node_modules/tsx/dist/cli.mjs');
  const child = spawn(process.execPath, [tsx, 'main/start.ts', ...options], { cwd: projectRoot });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', chunk => {
      output += chunk;
    });
  }
  const ended = new Promise<number | null>(resolve => child.once('exit', resolve));
  return { child, ended, output: () => output };
}

test('npm start -- --serve prints an address that answers, and ends when asked to', async () => {
  const { child, ended, output } = start('--serve', '--port', '0');
  await expect.poll(output, { timeout: 60_000 }).toMatch(/http:\/\/127\.0\.0\.1:\d+\//);
  const address = output().match(/http:\S+\//)?.[0] as string;
  const response = await fetch(address);
  expect(response.status).toBe(200);
  expect(await response.text()).toContain('<title>Turnwright</title>');
  expect(response.headers.get('content-security-policy')).toContain("script-src 'self'");
  child.kill('SIGTERM');
  expect(await ended).toBe(0);
  await expect(fetch(address)).rejects.toThrow();
});

test('an unknown option is told, with the accepted ones', async () => {
  const { ended, output } = start('--srve');
  expect(await ended).toBe(2);
  expect(output()).toMatch(/--srve.*accepted are --serve/);
});
