import type { Asked, Told } from './long-reading.ts';
import { type Found, readText } from './reading.ts';

/** Runs in a worker: reads one text after the other and says how far it is. */
self.addEventListener('message', ({ data: { text, name, wanted } }: MessageEvent<Asked>) => {
  const tell = (told: Told) => self.postMessage(told);
  let last = 0;
  const found: Found = readText(text, name, wanted, share => {
    if (share - last < 0.01) return;
    last = share;
    tell({ share });
  });
  tell({ found });
});
