import { describe, expect, it } from 'vitest';
import { checkWorking, type Working } from '../../../core/working/index.ts';

// Every function a room's working.ts exports must have an example in examples/ROOM.ts and hold there.
const rooms = import.meta.glob<Record<string, unknown>>('../../../core/*/working.ts', { eager: true });
const given = import.meta.glob<{ examples: Record<string, () => Working | Working[]> }>('./examples/*.ts', {
  eager: true,
});

const exported = Object.entries(rooms).flatMap(([path, module]) => {
  const room = path.split('/').at(-2) ?? '';
  return Object.keys(module)
    .filter(name => typeof module[name] === 'function')
    .map(name => ({ room, name }));
});

describe('every working', () => {
  it('was found', () => {
    expect(exported.map(each => each.name)).toContain('shapeWorkings');
  });

  it.each(exported)('$room: $name gives its result by its formula', ({ room, name }) => {
    const example = given[`./examples/${room}.ts`]?.examples[name];
    expect(example, `add an example of ${name} to test/core/working/examples/${room}.ts`).toBeTypeOf(
      'function',
    );
    const workings = [example?.() ?? []].flat();
    expect(workings.length).toBeGreaterThan(0);
    expect(workings.flatMap(checkWorking)).toEqual([]);
  });
});
