import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { getHost } from '../host/index.ts';
import { activePair, errorWords, report, t } from '../state/index.ts';
import { PairSheet } from './pair-sheet.tsx';

const content = signal<(() => JSX.Element) | null>(null);

/** What is on paper just now. The page's print style shows nothing else; on screen it is not seen. */
export function Paper(): JSX.Element | null {
  useEffect(() => {
    // The browser's own print command prints the active pair's sheet, and takes it away again.
    let own = false;
    const before = () => {
      const id = activePair.peek()?.id;
      if (content.peek() === null && id !== undefined) {
        content.value = () => <PairSheet id={id} />;
        own = true;
      }
    };
    const after = () => {
      if (own) content.value = null;
      own = false;
    };
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  const draw = content.value;
  return draw && <article class="pair-sheet">{draw()}</article>;
}

const drawn = () => new Promise<void>(resolve => requestAnimationFrame(() => setTimeout(resolve)));

/** Puts a page on paper and makes a PDF of it; `what` is how it is named in what is reported. */
export async function printPaper(what: string, fileName: string, draw: () => JSX.Element): Promise<void> {
  content.value = draw;
  await drawn();
  try {
    if (await getHost().printPdf(fileName)) report(t('print.made', { what }));
  } catch (error) {
    report(t('print.notMade', { what, why: errorWords(error) }), 'error');
  } finally {
    content.value = null;
  }
}
