import { buffer } from 'node:stream/consumers';
import { t } from './words.ts';

export interface Streams {
  /** Writes; a promise where the reader is behind, resolved when there is room again. */
  readonly out: (text: string) => void | Promise<void>;
  readonly err: (text: string) => void;
  readonly stdin: () => Promise<Uint8Array>;
}

/** The process's own streams, ended quietly when the reader behind a pipe has seen enough (`| head`). */
export function processStreams(): Streams {
  process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
    if (code === 'EPIPE') process.exit(0);
    process.stderr.write(`${t('calc.notPrinted', { code: String(code) })}\n`);
    process.exit(1);
  });
  let draining: Promise<void> | null = null;
  return {
    out(chunk) {
      if (process.stdout.write(chunk)) return;
      draining ??= new Promise<void>(resolve => process.stdout.once('drain', resolve)).then(() => {
        draining = null;
      });
      return draining;
    },
    err: chunk => process.stderr.write(chunk),
    stdin: () => buffer(process.stdin),
  };
}

/** Control characters do things to a terminal, marks of direction turn a line round; a name out of a file must not. */
export function plain(told: string): string {
  return told.replace(/[^\P{Cc}\n]|[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/gu, '\uFFFD');
}
