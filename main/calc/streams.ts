import { buffer } from 'node:stream/consumers';

export interface Streams {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly stdin: () => Promise<Uint8Array>;
}

/** The process's own streams, ended quietly when the reader behind a pipe has seen enough (`| head`). */
export function processStreams(): Streams {
  process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
    if (code === 'EPIPE') process.exit(0);
    process.stderr.write(`standard output: could not be written (${code})\n`);
    process.exit(1);
  });
  return {
    out: chunk => process.stdout.write(chunk),
    err: chunk => process.stderr.write(chunk),
    stdin: () => buffer(process.stdin),
  };
}

/** Control characters do things to a terminal; a name out of a file must not. */
export function plain(told: string): string {
  return told.replace(/[^\P{Cc}\n]/gu, '\uFFFD');
}
