// @module-tag slow
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { pairSchema } from '../../../core/pair/pair-schema.ts';
import { categories, disciplines, editionSchema } from '../../../core/rules/edition.ts';
import { commands } from '../../../main/calc/commands.ts';
import { projectRoot } from '../../../main/tools/index.ts';
import { json, run, write } from './drive.ts';

const readme = await readFile(join(projectRoot, 'README.md'), 'utf8');
const blocks = (language: string) =>
  [...readme.matchAll(new RegExp(`\`\`\`${language}\\n(.*?)\`\`\``, 'gs'))].map(([, text]) => text);

describe('README.md', () => {
  test('its pair file is read, says every field there is and answers every question', async () => {
    const [example] = blocks('json');
    expect(Object.keys(JSON.parse(example))).toEqual(Object.keys(pairSchema.shape));
    const file = await write('readme.pair.json', example);
    for (const command of ['shape', 'bend', 'vibrate', 'carve', 'run', 'check']) {
      expect((await json(command, file)).name).toBe('Larch 155');
    }
    expect((await json('check', file)).control.missing).toEqual([]);
  });

  test('its own limits are read, say every field there is and decide', async () => {
    const [pair, limits] = blocks('json');
    const reported = readme.slice(readme.indexOf(limits));
    const { edition, verdict, items } = await json(
      'check',
      await write('readme.pair.json', pair),
      '--edition',
      await write('readme.rules.json', limits),
    );
    expect(edition).toBe(JSON.parse(limits).edition);
    expect(verdict).toBe('passes');
    expect(items).toHaveLength(2);
    const limit = editionSchema.shape.limits.element.shape;
    for (const field of Object.keys(limit)) expect(limits).toContain(`"${field}"`);
    for (const name of [...limit.quantity.options, ...limit.status.options, ...categories, ...disciplines])
      expect(reported).toContain(name);
  });

  test('its bench readings give the stiffness they were made from', async () => {
    const [readings] = blocks('csv');
    const { stations, enough } = await json(
      'identify',
      await write('readme.csv', readings),
      '--contact-length',
      '1360',
    );
    expect(enough).toBe(true);
    expect(stations[2].newtonM2).toBeGreaterThan(250);
  });

  test('its commands run as told', { timeout: 240_000 }, async () => {
    const reported = blocks('sh').flatMap(block => [...block.matchAll(/^npm run -s calc -- (.*)$/gm)]);
    expect(reported.length).toBeGreaterThanOrEqual(4);
    for (const [, line] of reported) {
      const argv = line
        .split(' ')
        .map(each => (each.startsWith('renderer/') ? join(projectRoot, each) : each));
      const { code, err } = await run(argv);
      expect({ code, err: err.replace(/^quickest runs: \d+ %\n/gm, '') }, line).toEqual({ code: 0, err: '' });
    }
  });

  test('it names every command', () => {
    const named = [...readme.matchAll(/^\| `(\w+) (?:PAIR|MEASUREMENTS)/gm)].map(([, name]) => name);
    expect(named).toEqual(Object.keys(commands));
  });
});
