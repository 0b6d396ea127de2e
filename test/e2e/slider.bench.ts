import { afterAll, beforeAll, bench, describe } from 'vitest';
import { ensureBuilt } from '../../main/tools/index.ts';
import { type App, openApp } from './support/app.ts';
import { settled } from './support/settled.ts';

let app: App;

beforeAll(async () => {
  ensureBuilt(() => {});
  app = await openApp();
  // Software drawing of the scene would be all that is measured; where a graphics card draws, it costs the page
  // little, so the flat drawings stand in for it here.
  await app.page.addInitScript(() => {
    const getContext = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (
      this: HTMLCanvasElement,
      kind: string,
      ...rest: never[]
    ) {
      return kind.startsWith('webgl') ? null : getContext.call(this, kind as '2d', ...rest);
    } as typeof getContext;
  });
  await app.page.reload();
  await app.page.getByRole('button', { name: /Slalom against giant slalom/ }).click();
  await app.page.locator('input[type=range][aria-label="Edge angle"]').waitFor();
  // The tables are made once; a drag begins after them.
  await settled(app.page);
}, 90_000);
afterAll(() => app?.close());

/**
 * Moves the edge angle as a drag does and waits until its reading has changed and the page is laid out
 * again. One 60 Hz frame is 16.7 ms; the way into the browser and back is several of each run's.
 */
const move = (half: boolean) =>
  app.page.evaluate(side => {
    const slider = document.querySelector<HTMLInputElement>('input[type=range][aria-label="Edge angle"]')!;
    const field = document.querySelector<HTMLInputElement>('.quantity-field input')!;
    const before = field.value;
    slider.value = side ? '500' : '620';
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    return new Promise<void>(resolve => {
      const look = () => {
        if (field.value === before) return queueMicrotask(look);
        document.body.getBoundingClientRect();
        resolve();
      };
      queueMicrotask(look);
    });
  }, half);

describe('edge angle slider to readings', () => {
  let side = false;
  bench(
    'two pairs in the Edge view',
    async () => {
      side = !side;
      await move(side);
    },
    { time: 3000, warmupTime: 1000 },
  );
});
