import { readdirSync, readFileSync } from 'node:fs';
import { type CarvingSki, carvingSkiOf } from '../../../core/carve/index.ts';
import { readPair, skiOf } from '../../../core/pair/index.ts';

const folder = new URL('../../../renderer/demo/', import.meta.url);

/** Every demo pair by its file name, as the groove sees it. */
export const demoPairs: readonly (readonly [name: string, ski: CarvingSki])[] = readdirSync(folder)
  .filter(name => name.endsWith('.pair.json'))
  .map(name => {
    const read = readPair(readFileSync(new URL(name, folder), 'utf8'));
    if (!read.ok) throw new Error(`${name}: ${read.problems.map(String).join(', ')}`);
    const answer = carvingSkiOf(skiOf(read.pair));
    if (!answer.ok) throw new Error(`${name}: ${JSON.stringify(answer.reason)}`);
    return [name, answer.ski] as const;
  });
