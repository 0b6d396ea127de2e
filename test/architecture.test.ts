import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type ICruiseResult, type IForbiddenRuleType } from 'dependency-cruiser';
import ts from 'typescript';
import { beforeAll, describe, expect, test } from 'vitest';
import { projectRoot } from '../main/tools/index.ts';

const { coreRooms, explaining, mainRooms, rendererRooms, forbidden, options } = createRequire(
  import.meta.url,
)('./dependency-cruiser.cjs') as Rules;

type Rooms = Readonly<Record<string, readonly string[]>>;
interface Rules {
  readonly coreRooms: Rooms;
  readonly explaining: readonly string[];
  readonly mainRooms: Rooms;
  readonly rendererRooms: Rooms;
  readonly forbidden: IForbiddenRuleType[];
  readonly options: object;
}

/** Breaches of the rules among the files under `baseDir`, one line each. */
async function breaches(baseDir: string, folders: string[]): Promise<{ lines: string[]; modules: number }> {
  const { output } = await cruise(folders, {
    ...options,
    baseDir,
    validate: true,
    ruleSet: { forbidden },
  });
  const { summary, modules } = output as ICruiseResult;
  const lines = summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`);
  return { lines, modules: modules.length };
}

/** What core must not touch: names of the page, of Node, the clock and unseeded chance. */
const beyondCore =
  /\b(document|window|navigator|localStorage|fetch|process|Buffer|require|setTimeout|setInterval|performance)\s*[.(]|\bDate\b|\bMath\.random\b|\bglobalThis\b/;

async function sourcesIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries.filter(entry => /\.tsx?$/.test(entry.name)).map(entry => join(entry.parentPath, entry.name));
}

function withoutComments(source: string): string {
  return source
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\/\/.*$/gm, '')
    .replace(/'[^'\n]*'/g, "''");
}

describe('architecture', () => {
  test('every import follows the arrows between the rooms', async () => {
    const { lines, modules } = await breaches(projectRoot, ['core', 'main', 'renderer']);
    expect(lines).toEqual([]);
    expect(modules).toBeGreaterThan(40);
  });

  test('every room has its line among the rules, and nothing stands outside a room', async () => {
    for (const [folder, rooms, outside] of [
      ['core', coreRooms, []],
      ['main', mainRooms, []],
      ['renderer', rendererRooms, ['app.tsx', 'vite.config.ts']],
    ] as const) {
      const entries = await readdir(join(projectRoot, folder), { withFileTypes: true });
      expect(
        entries.filter(entry => entry.isFile() && /\.tsx?$/.test(entry.name)).map(entry => entry.name),
      ).toEqual(outside);
      const folders = entries.filter(entry => entry.isDirectory()).map(entry => entry.name);
      expect(folders.filter(name => !Object.hasOwn(rooms, name))).toEqual([]);
    }
  });

  test('the arrows between the rooms of the renderer go one way, in the order of the list', () => {
    const order = Object.keys(rendererRooms);
    for (const [room, allowed] of Object.entries(rendererRooms)) {
      expect(allowed.filter(other => order.indexOf(other) >= order.indexOf(room))).toEqual([]);
    }
  });

  test('core names nothing of the page, of Node, of the clock or of chance', async () => {
    const offenders: string[] = [];
    for (const file of await sourcesIn(join(projectRoot, 'core'))) {
      const found = withoutComments(await readFile(file, 'utf8')).match(beyondCore);
      if (found) offenders.push(`${file}: ${found[0]}`);
    }
    expect(offenders).toEqual([]);
  });

  test('core is compiled without the types of the page and of Node', async () => {
    const config = join(projectRoot, 'core/tsconfig.json');
    const { options: coreOptions, errors } = ts.parseJsonConfigFileContent(
      ts.readConfigFile(config, ts.sys.readFile).config,
      ts.sys,
      dirname(config),
    );
    expect(errors).toEqual([]);
    const folder = await mkdtemp(join(tmpdir(), 'turnwright-core-'));
    const complaints = async (source: string) => {
      const file = join(folder, 'planted.ts');
      await writeFile(file, source);
      const program = ts.createProgram([file], { ...coreOptions, composite: false, incremental: false });
      return program
        .getSemanticDiagnostics()
        .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
    };
    for (const name of ['document', 'window', 'process', 'Buffer', 'setTimeout', 'performance', 'console']) {
      expect((await complaints(`export const beyond = ${name};`)).join()).toContain(`'${name}'`);
    }
    expect((await complaints("export { readFileSync } from 'node:fs';")).join()).toContain("'node:fs'");
    expect(await complaints('export const squares = Float64Array.of(1, 2).map(x => x ** 2);')).toEqual([]);
    await rm(folder, { recursive: true });
  });

  test('every file stays well under 350 lines, but for the texts of a language, which are one file', async () => {
    const long: string[] = [];
    for (const folder of ['core', 'main', 'renderer']) {
      for (const file of await sourcesIn(join(projectRoot, folder))) {
        // A language is one list of texts, as long as there is something to say.
        if (file.endsWith('core/language/english.ts')) continue;
        const lines = (await readFile(file, 'utf8')).split('\n').length;
        if (lines > 350 && !file.endsWith('/core/language/english.ts')) long.push(`${file}: ${lines} lines`);
      }
    }
    expect(long).toEqual([]);
  });
});

/** A small house that keeps every rule, with one file more for each rule that breaks it. */
const sound: Record<string, string> = {
  'main/host/index.ts': 'export const seam = 1;',
  'main/host/inside.ts': 'export const inside = 1;',
  'renderer/page.ts': 'export const page = 1;',
  'renderer/views/one/index.tsx': 'export const one = 1;',
  'renderer/views/one/inside.ts': 'export const inside = 1;',
  'node_modules/stranger/package.json': '{ "name": "stranger", "main": "index.js" }',
  'node_modules/stranger/index.js': 'module.exports = {};',
  ...Object.fromEntries(
    [
      ...Object.keys(coreRooms).map(room => `core/${room}`),
      ...Object.keys(mainRooms).map(room => `main/${room}`),
      ...Object.keys(rendererRooms).map(room => `renderer/${room}`),
    ].flatMap(room => [
      [`${room}/index.ts`, 'export const one = 1; export type One = typeof one;'],
      [`${room}/inside.ts`, 'export const inside = 1;'],
    ]),
  ),
};

type Breach = readonly [rule: string, file: string, source: string];

/** One breach of every arrow and of every list of packages. */
function breachesOfRooms(folder: string, prefix: string, rooms: Rooms): Breach[] {
  return Object.entries(rooms).flatMap(([room, allowed]) => {
    const home = `${folder}/${room}`;
    const beyond = Object.keys(rooms).filter(other => other !== room && !allowed.includes(other));
    const byType = beyond.filter(other => !explaining.includes(other));
    return [
      [`${prefix}${room}-arrow`, `${home}/arrow.ts`, `export { one } from '../${beyond[0]}/index.ts';`],
      ...(folder === 'core'
        ? [
            [
              `${room}-type-arrow`,
              `${home}/type-arrow.ts`,
              `import type { One } from '../${byType[0]}/index.ts'; export type Two = One;`,
            ] as const,
          ]
        : []),
      [`${prefix}${room}-packages`, `${home}/packages.ts`, "export * from 'stranger';"],
    ] as const;
  });
}

const planted: readonly Breach[] = [
  ...breachesOfRooms('core', '', coreRooms),
  ...breachesOfRooms('main', 'main-', mainRooms),
  ...breachesOfRooms('renderer', 'renderer-', rendererRooms),
  ['renderer-by-the-door', 'renderer/rack/wall.ts', "export { inside } from '../kit/inside.ts';"],
  ['page-by-the-door', 'renderer/wall.tsx', "export { inside } from './kit/inside.ts';"],
  ['no-view-imports-a-view', 'renderer/views/two/index.tsx', "export { one } from '../one/index.tsx';"],
  ['no-view-imports-a-view', 'renderer/views/two/list.ts', "export { one } from '../index.ts';"],
  ['view-by-the-door', 'renderer/views/list.ts', "export { inside } from './one/inside.ts';"],
  ['jobs-know-only-core', 'renderer/answers/jobs/state.ts', "export { one } from '../../state/index.ts';"],
  ['jobs-know-only-core', 'renderer/answers/jobs/runner.ts', "export { inside } from '../inside.ts';"],
  ['by-the-door', 'core/shape/wall.ts', "export { inside } from '../numeric/inside.ts';"],
  ['main-by-the-door', 'main/web/wall.ts', "export { inside } from '../host/inside.ts';"],
  ['by-the-door-from-outside', 'main/calc/wall.ts', "export { inside } from '../../core/numeric/inside.ts';"],
  ['by-the-door-from-outside', 'renderer/wall.ts', "export { inside } from '../core/numeric/inside.ts';"],
  ['core-without-node', 'core/shape/node.ts', "export { readFileSync } from 'node:fs';"],
  ['core-stands-alone', 'core/shape/main.ts', "export { seam } from '../../main/host/index.ts';"],
  ['core-stands-alone', 'core/shape/page.ts', "export { page } from '../../renderer/page.ts';"],
  ['only-calc-asks-core', 'main/electron/physics.ts', "export { one } from '../../core/shape/index.ts';"],
  ['host-asks-only-texts', 'main/host/physics.ts', "export { one } from '../../core/shape/index.ts';"],
  ['host-without-node', 'main/host/node.ts', "export { readFileSync } from 'node:fs';"],
  ['renderer-knows-only-the-host-seam', 'renderer/shell.ts', "export { one } from '../main/web/index.ts';"],
  [
    'renderer-knows-only-the-host-seam',
    'renderer/seam.ts',
    "export { inside } from '../main/host/inside.ts';",
  ],
  ['renderer-without-node', 'renderer/node.ts', "export { readFileSync } from 'node:fs';"],
  ['main-without-renderer', 'main/electron/page.ts', "export { page } from '../../renderer/page.ts';"],
  ['no-circle', 'core/shape/back.ts', "import { there } from './there.ts'; export const back = () => there;"],
];

/** What the planted circle needs to be one; a circle is told once. */
const otherHalf = {
  'core/shape/there.ts': "import { back } from './back.ts'; export const there = () => back;",
};

/** Breaches found in a folder of these files, which is gone afterwards. */
async function breachesIn(files: Readonly<Record<string, string>>) {
  const baseDir = await mkdtemp(join(tmpdir(), 'turnwright-rooms-'));
  for (const [name, text] of Object.entries(files)) {
    await mkdir(dirname(join(baseDir, name)), { recursive: true });
    await writeFile(join(baseDir, name), text);
  }
  const found = await breaches(baseDir, ['core', 'main', 'renderer']);
  await rm(baseDir, { recursive: true });
  return found;
}

describe('the rules notice', () => {
  let lines: string[];
  beforeAll(async () => {
    lines = (
      await breachesIn({
        ...sound,
        ...otherHalf,
        ...Object.fromEntries(planted.map(([, file, source]) => [file, source])),
      })
    ).lines;
  });

  test.each(planted)('%s in %s', (rule, file) => {
    expect(lines.filter(line => line.startsWith(`${rule}: ${file} `))).toHaveLength(1);
  });

  test('with a breach planted for every rule there is', () => {
    const broken = new Set(planted.map(([rule]) => rule));
    expect(forbidden.map(({ name }) => name ?? '').filter(name => !broken.has(name))).toEqual([]);
  });

  test('nothing where nothing is wrong', async () => {
    const explained = {
      'core/shape/working.ts': "import type { One } from '../working/index.ts'; export type W = One;",
      'core/carve/groove.ts': "export { one } from '../shape/index.ts';",
      'main/electron/shell.ts': "export { one } from '../calc/index.ts'; export { join } from 'node:path';",
      'renderer/host.ts': "export { seam } from '../main/host/index.ts';",
    };
    const found = await breachesIn({ ...sound, ...explained });
    expect(found.lines).toEqual([]);
    expect(found.modules).toBeGreaterThan(40);
  });

  test('a clock or chance in a source', () => {
    for (const source of ['const t = Date.now();', 'Math.random()', 'document.title', 'process.exit(1)']) {
      expect(source).toMatch(beyondCore);
    }
    expect(withoutComments('// a window. \nconst update = 1; /* Date */')).not.toMatch(beyondCore);
  });
});
