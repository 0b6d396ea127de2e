import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type App, accessibilityFaults, openApp } from './support/app.ts';
import { settled } from './support/settled.ts';

const QUESTIONS = ['Shape', 'Flex', 'Edge', 'Slope', 'Set'] as const;
const LOOKS = ['Snow', 'Night', 'Projector'] as const;
/** Least contrast of a focus ring with what is under it (a mark of a control's state, 3 to 1). */
const LEAST_CONTRAST = 3;

let app: App;
let page: Page;
beforeAll(async () => {
  app = await openApp({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
  page = app.page;
  await page.getByRole('heading', { level: 1 }).waitFor();
});
afterAll(() => app?.close());

interface Stop {
  readonly label: string;
  readonly region: string;
  /** Contrast of the ring with the ground under it; 0 when nothing marks the focus. */
  readonly contrast: number;
}

/** What has the focus now, and how well it is marked; null when nothing has. */
function stop(): Promise<Stop | null> {
  return page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body) return null;
    const parts = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const luminance = (colour: string) => {
      const [r = 0, g = 0, b = 0] = parts(colour)
        .slice(0, 3)
        .map(value => (value <= 10.31 ? value / 3294.6 : ((value / 255 + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const ground = (element: Element | null): string => {
      for (let each = element; each; each = each.parentElement) {
        const { backgroundColor } = getComputedStyle(each);
        if ((parts(backgroundColor)[3] ?? 1) > 0.5) return backgroundColor;
      }
      return 'rgb(255, 255, 255)';
    };
    const contrast = (ring: string, element: Element) => {
      const [light = 0, dark = 0] = [luminance(ring), luminance(ground(element.parentElement))].sort(
        (a, b) => b - a,
      );
      return (light + 0.05) / (dark + 0.05);
    };
    const outlined = (element: Element) => {
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
      const { width, height } = element.getBoundingClientRect();
      const seen = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && width * height > 0;
      return seen ? contrast(outlineColor, element) : 0;
    };
    /** A shape of a drawing whose stroke is wide, and is so only while the focus is there. */
    const stroked = (element: SVGElement) => {
      const shapes = [element, ...element.querySelectorAll('*')];
      const strokes = () =>
        shapes.map(each => {
          const { stroke, strokeWidth } = getComputedStyle(each);
          return { stroke, width: stroke === 'none' ? 0 : Number.parseFloat(strokeWidth) };
        });
      const focused = strokes();
      element.blur();
      const plain = strokes();
      element.focus({ preventScroll: true });
      const at = focused.findIndex(
        ({ stroke, width }, each) =>
          width >= 2 && (stroke !== plain[each]?.stroke || width > plain[each].width),
      );
      return at < 0 ? 0 : contrast(focused[at]!.stroke, shapes[at]!);
    };
    const drawn = at.matches('.segments input') ? at.nextElementSibling! : at;
    const found = outlined(drawn) || (at instanceof SVGElement ? stroked(at) : 0);
    const region =
      at.closest('#rail, #rack, #stage, #readings')?.id ?? at.closest('header, footer')?.className;
    const label =
      at.getAttribute('aria-label') ?? (at as HTMLInputElement).labels?.[0]?.textContent ?? at.textContent;
    return { label: label?.trim().slice(0, 60) ?? '', region: region ?? '', contrast: found };
  });
}

async function choose(look: (typeof LOOKS)[number], question: (typeof QUESTIONS)[number]): Promise<void> {
  await page.getByRole('radio', { name: look, exact: true }).check({ force: true });
  await page.getByRole('navigation').getByRole('button', { name: question }).click();
  await page.locator('[aria-current="page"]').getByText(question).waitFor();
  await settled(page);
}

/** Every stop from the first control to the last, forwards. */
async function everyStop(): Promise<Stop[]> {
  await page.locator('.top-bar button').first().focus();
  // A key makes the focus a keyboard's.
  await page.keyboard.press('Shift+Tab');
  await page.locator('.top-bar button').first().focus();
  const stops: Stop[] = [];
  for (let press = 0; press < 250; press++) {
    const here = await stop();
    // After the last control comes the window's own frame, or the first control again.
    if (here === null || (stops.length > 1 && here.region === 'top-bar' && here.label === stops[0]!.label))
      return stops;
    stops.push(here);
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never leaves the page: ${stops.slice(-5).map(({ label }) => label)}`);
}

describe.each(LOOKS)('in the %s look', look => {
  test.each(QUESTIONS)(
    'every control of %s shows that it has the focus, in the order of the page',
    async question => {
      await choose(look, question);
      const stops = await everyStop();
      expect(stops.length).toBeGreaterThan(25);
      expect(stops.filter(({ contrast }) => contrast < LEAST_CONTRAST)).toEqual([]);
      const regions = stops.map(({ region }) => region).filter((each, at, all) => each !== all[at - 1]);
      expect(regions).toEqual(['top-bar', 'rail', 'rack', 'stage', 'readings', 'foot']);
    },
  );

  test('a tick box stands on the ground around it and its frame can be seen', async () => {
    await choose(look, 'Set');
    const seen = await page.evaluate(() => {
      const box = document.querySelector('.rack-row:not(.active) > input:not(:checked)')!;
      const { appearance, backgroundColor, borderTopColor } = getComputedStyle(box);
      const panel = getComputedStyle(box.closest('.rack')!).backgroundColor;
      const control = Object.assign(document.createElement('i'), { style: 'color: var(--control)' });
      box.parentElement!.append(control);
      const { color } = getComputedStyle(control);
      control.remove();
      return { appearance, ground: backgroundColor === panel, frame: borderTopColor === color };
    });
    expect(seen).toEqual({ appearance: 'none', ground: true, frame: true });
  });

  test.each(QUESTIONS)('%s has no accessibility faults', async question => {
    await choose(look, question);
    expect(await accessibilityFaults(page)).toEqual([]);
  });
});

test('F6 goes round rail, rack, stage and readings, Shift+F6 back, from wherever the focus is', async () => {
  const region = () =>
    page.evaluate(() => document.activeElement?.closest('#rail, #rack, #stage, #readings')?.id);
  for (const question of QUESTIONS) {
    await choose('Snow', question);
    await page.locator('#rack-search').focus();
    const seen: unknown[] = [];
    for (const keys of ['F6', 'F6', 'F6', 'F6', 'Shift+F6', 'Shift+F6', 'Shift+F6', 'Shift+F6']) {
      await page.keyboard.press(keys);
      seen.push(await region());
      expect((await stop())?.contrast).toBeGreaterThan(LEAST_CONTRAST);
    }
    expect(seen).toEqual(['stage', 'readings', 'rail', 'rack', 'rail', 'readings', 'stage', 'rack']);
  }
});

test('the gates of a set are one stop; Page Down goes on to the next, an arrow key moves it', async () => {
  await choose('Snow', 'Set');
  const gates = (await everyStop()).filter(({ label }) => /^Gate \d/.test(label));
  expect(gates.map(({ label }) => label.split(',')[0])).toEqual(['Gate 1']);
  await page.getByRole('button', { name: /^Gate 1,/ }).focus();
  const named = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
  await page.keyboard.press('PageDown');
  await expect.poll(named).toMatch(/^Gate 2, 1\.40\sm to the left, 19\.10\sm/);
  await page.keyboard.press('ArrowRight');
  await expect.poll(named).toMatch(/^Gate 2, 1\.40\sm to the left, 19\.20\sm/);
  await page.keyboard.press('End');
  await expect.poll(named).toMatch(/^Gate 56,/);
  await page.keyboard.press('Home');
  await expect.poll(named).toMatch(/^Gate 1,/);
  await page.keyboard.press('PageDown');
  await page.keyboard.press('Control+z');
  await expect.poll(named).toMatch(/^Gate 2, 1\.40\sm to the left, 19\.10\sm/);
});

test('the time is moved on the traces by arrow keys', async () => {
  await choose('Snow', 'Slope');
  const traces = (await everyStop()).filter(({ label }) => label.endsWith('over time'));
  expect(traces).toHaveLength(1);
  const field = page.getByRole('slider', { name: traces[0]!.label });
  await field.focus();
  const before = Number(await field.getAttribute('aria-valuenow'));
  await page.keyboard.press('ArrowRight');
  await expect.poll(async () => Number(await field.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
});

test('no place that takes the page over leaves the focus nowhere, there or back', async () => {
  await choose('Snow', 'Shape');
  const here = () => page.evaluate(() => document.activeElement?.id || document.activeElement?.localName);
  const press = async (keys: string, at: string) => {
    await page.keyboard.press(keys);
    await expect.poll(here).toBe(at);
  };
  await page.getByRole('button', { name: 'Board', exact: true }).focus();
  await press('Enter', 'h1');
  expect((await stop())?.contrast).toBeGreaterThan(LEAST_CONTRAST);
  await press('Escape', 'board-button');
  await page.locator('#readings').focus();
  await press('F9', 'h1');
  await press('Escape', 'readings');
  await page.getByRole('button', { name: 'Squad rack' }).focus();
  await press('Enter', 'stage');
  await page.keyboard.press('Tab');
  expect(await here()).toBe('rack-search');
  await page.getByRole('button', { name: 'Back', exact: true }).focus();
  await press('Enter', 'rack');
});

test('a message taken off by keyboard leaves the focus beside where it stood', async () => {
  const open = () => page.getByRole('button', { name: 'Open…' }).first().click();
  await app.chooseFiles([{ name: 'torn.pair.json', text: '{' }], open);
  const clear = page.getByRole('button', { name: 'Clear this message' });
  await clear.press('Enter');
  await clear.waitFor({ state: 'detached' });
  expect(await stop()).toMatchObject({ label: 'About the model', region: 'foot' });
});

test('what is typed into a new pair is its name', async () => {
  await page.getByRole('button', { name: 'New pair', exact: true }).first().press('Enter');
  await page.locator('dialog[open]').waitFor();
  await page.keyboard.type('Hornbeam 160');
  await page.keyboard.press('Escape');
  await page.locator('.rack-words').getByText('Hornbeam 160', { exact: true }).waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('New pair');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
});

test('a person who wants less motion gets none that the page starts itself', async () => {
  await choose('Snow', 'Edge');
  const moving = await page.evaluate(() => ({
    animations: document.getAnimations().length,
    transitions: [...document.querySelectorAll('*')].filter(
      each => Number.parseFloat(getComputedStyle(each).transitionDuration) > 0,
    ).length,
  }));
  expect(moving).toEqual({ animations: 0, transitions: 0 });
  const time = page.locator('.scene-time');
  const before = await time.textContent();
  await page.evaluate(
    frames =>
      new Promise<void>(resolve => {
        const next = (left: number) => (left === 0 ? resolve() : requestAnimationFrame(() => next(left - 1)));
        next(frames);
      }),
    40,
  );
  expect(await time.textContent()).toBe(before);
});

test('nothing went wrong on the way', () => {
  expect(app.problems).toEqual([]);
});
