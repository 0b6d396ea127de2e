import { batch, useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { errorWords } from '../state/index.ts';

/** What is asked of a drawing library before it draws. */
interface Drawing {
  webglAvailable(): boolean;
}

interface Picture {
  readonly canvas: HTMLCanvasElement;
  end(): void;
}

interface Words {
  /** The page can draw nothing in space. */
  none(): string;
  /** The driver has given the picture up. */
  lost(): string;
  /** The library could not be fetched: the server has gone. */
  notFetched(): string;
}

export interface PictureState {
  /** Where the picture is drawn. */
  readonly box: RefObject<HTMLDivElement | null>;
  /** Why it is not, in words; null while it is, or is being laid out. */
  readonly flat: string | null;
  /** Fetches the library once more, where that is what failed. */
  readonly again: (() => void) | null;
}

/** From one look at whether the driver draws again to the next, ms. */
const FIRST_LOOK_MS = 500;
const LONGEST_PAUSE_MS = 30_000;

/**
 * A picture drawn by a library that is fetched when it is first looked at. One that the driver gives up is drawn anew once
 * the driver draws again, without anybody leaving the view.
 */
export function usePicture<D extends Drawing>(
  load: () => Promise<D>,
  begin: (drawing: D, box: HTMLElement) => Picture,
  words: Words,
): PictureState {
  const box = useRef<HTMLDivElement>(null);
  const flat = useSignal<string | null>(null);
  const notFetched = useSignal(false);
  const turn = useSignal(0);
  const again = () =>
    batch(() => {
      flat.value = null;
      notFetched.value = false;
      turn.value++;
    });

  useEffect(() => {
    let gone = false;
    let look: ReturnType<typeof setTimeout> | undefined;
    const ends: (() => void)[] = [];
    const lookAgain = (drawing: D, pause: number) => {
      look = setTimeout(() => {
        if (document.visibilityState === 'visible' && drawing.webglAvailable()) again();
        else lookAgain(drawing, Math.min(2 * pause, LONGEST_PAUSE_MS));
      }, pause);
    };
    const draw = async () => {
      const drawing = await load().catch(() => null);
      if (gone) return;
      if (!drawing) {
        flat.value = words.notFetched();
        notFetched.value = true;
        return;
      }
      if (!box.current) return;
      if (!drawing.webglAvailable()) {
        flat.value = words.none();
        return;
      }
      const { canvas, end } = begin(drawing, box.current);
      const lost = () => {
        flat.value = words.lost();
        lookAgain(drawing, FIRST_LOOK_MS);
      };
      canvas.addEventListener('webglcontextlost', lost);
      canvas.addEventListener('webglcontextrestored', again);
      ends.push(end, () => {
        canvas.removeEventListener('webglcontextlost', lost);
        canvas.removeEventListener('webglcontextrestored', again);
      });
    };
    draw().catch(error => {
      flat.value = errorWords(error);
    });
    return () => {
      gone = true;
      clearTimeout(look);
      for (const end of ends.reverse()) end();
    };
  }, [turn.value]);

  return { box, flat: flat.value, again: notFetched.value ? again : null };
}
