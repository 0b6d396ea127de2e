import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { languages } from '../../../core/language/index.ts';
import { projectRoot } from '../../../main/tools/index.ts';

/** Texts of the sources that speak, the languages themselves left out. */
async function sources(): Promise<string> {
  const listed = execFileSync('git', ['ls-files', 'core', 'renderer', 'main'], { cwd: projectRoot });
  const names = listed
    .toString()
    .split('\n')
    .filter(name => /\.tsx?$/.test(name) && !/core\/language\/\w+\.ts$/.test(name));
  return (await Promise.all(names.map(name => readFile(join(projectRoot, name), 'utf8')))).join('\n');
}

test('every text of the language is said somewhere', async () => {
  const source = await sources();
  // A key may be put together: `worth.${input}`.
  const begun = [...source.matchAll(/`([a-zA-Z]+\.[a-zA-Z.]*)\$\{/g)].map(([, text]) => text);
  const unspoken = Object.keys(languages.en.texts).filter(
    key => !source.includes(`'${key}'`) && !begun.some(text => key.startsWith(text!)),
  );
  // These are put together in core/language itself.
  expect(unspoken.filter(key => !/^(fault|found|accepted|field)\./.test(key))).toEqual([]);
});
