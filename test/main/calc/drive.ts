import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { calc } from '../../../main/calc/command-line.ts';
import { least } from '../../core/pair/larch.ts';

/** Invented: stiffnesses the same all along keep the arithmetic of the tests short. */
export const larch = {
  ...least,
  discipline: 'SL',
  camberMm: 8,
  massKg: 1.9,
  bending: { kind: 'uniform', newtonM2: 200 },
  torsion: { kind: 'uniform', newtonM2: 120 },
  demo: true,
};

const folder = await mkdtemp(join(tmpdir(), 'turnwright-calc-'));

/** Writes a file for a command to read. */
export async function write(name: string, content: unknown): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

/** Runs a command line against streams of its own. */
export async function run(argv: string[], stdin: string | Uint8Array = '') {
  let out = '';
  let err = '';
  const streams = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    stdin: async () => (typeof stdin === 'string' ? new TextEncoder().encode(stdin) : stdin),
  };
  return { code: await calc(argv, streams), out, err };
}

/** The JSON document of a command that has to succeed without a word on standard error. */
export async function json(...argv: string[]) {
  const { code, out, err } = await run([...argv, '--json']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return JSON.parse(out);
}

/** The pair above, in a file. */
export const file = await write('larch.pair.json', larch);
