import { describe, expect, it } from 'vitest';
import { pairJsonSchema } from '../../../core/pair/index.ts';
import published from '../../../core/pair/pair.schema.json' with { type: 'json' };
import { least } from './larch.ts';

describe('the published schema', () => {
  // After a change of the schema, write it anew:
  // npx tsx -e "import('./core/pair/index.ts').then(p => console.log(JSON.stringify(p.pairJsonSchema(), null, 2)))" > core/pair/pair.schema.json
  // npx biome format --write core/pair/pair.schema.json
  it('is the one the program reads by', () => {
    expect(published).toEqual(pairJsonSchema());
    expect(published.required).toEqual(Object.keys(least));
  });
});
