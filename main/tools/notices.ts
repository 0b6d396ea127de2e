import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

interface PackageFile {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name?: string };
}

export interface BundledPackage {
  readonly name: string;
  readonly version: string;
  /** As the package states it, an SPDX expression. */
  readonly licence: string;
  /** Every licence and notice file of the package, whole. */
  readonly texts: readonly string[];
}

const LICENCE_FILE = /^(licen[cs]es?|copying|notice)([.-].*)?$/i;

/**
 * The packages whose folders are listed in the JSON files of `folder` (see `noteBundledPackages`), by name.
 *
 * @throws Error for a package that ships no licence: it may not be shipped on
 */
export function bundledPackages(folder: string): BundledPackage[] {
  const folders = new Set(
    readdirSync(folder).flatMap(file => JSON.parse(readFileSync(join(folder, file), 'utf8')) as string[]),
  );
  const packages = [...folders].map(readPackage);
  return packages.sort((one, other) => one.name.localeCompare(other.name, 'en'));
}

function readPackage(folder: string): BundledPackage {
  const { name, version, license, author } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  ) as PackageFile;
  const texts = readdirSync(folder)
    .filter(file => LICENCE_FILE.test(file))
    .sort()
    .map(file => readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim());
  const called = name ?? basename(folder);
  if (texts.length === 0 && license === 'MIT')
    texts.push(mitOf(typeof author === 'string' ? author : author?.name));
  if (texts.length === 0) {
    throw new Error(`${called} in ${dirname(folder)} ships no licence text; it may not go into the program.`);
  }
  return { name: called, version, licence: license ?? 'see its text', texts };
}

/** A few packages name this licence and ship no text; it asks for its text all the same. */
const mitOf = (
  author = 'its authors',
) => `The package names the MIT licence and ships no text of its own; this is that licence.

Copyright (c) ${author}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;

const RULE = '-'.repeat(80);

/** The file that goes with the program. */
export function noticesText(packages: readonly BundledPackage[]): string {
  const list = packages.map(({ name, version, licence }) => `${name} ${version} (${licence})`);
  const texts = packages.map(({ name, version, texts }) =>
    [RULE, `${name} ${version}`, RULE, ...texts].join('\n\n'),
  );
  return `Turnwright contains these packages, under their own licences:\n\n${list.join('\n')}\n\n${texts.join('\n\n')}\n`;
}
