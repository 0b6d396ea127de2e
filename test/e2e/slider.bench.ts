import { afterAll, beforeAll, bench, describe } from 'vitest';
import { ensureBuilt } from '../../main/build.ts';
import { type App, openApp } from './support/app.ts';

let app: App;

beforeAll(async () => {
  ensureBuilt(() => {});
  app = await openApp();
  await app.page.getByRole('button', { name: /Slalom against giant slalom/ }).click();
  await app.page.locator('input[type=range][aria-label="Edge angle"]').waitFor();
}, 90_000);
afterAll(() => app?.close());

/**
 * Moves the edge angle as a drag does and waits until its reading has changed and the page is laid out
 * again. One 60 Hz frame is 16.7 ms; about 1 ms of each run is the way into the browser and back.
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
