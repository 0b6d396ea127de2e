import type { Working } from '../../../../core/working/index.ts';

// Every function a room's working.ts exports must have an example in examples/ROOM.ts.
const rooms = import.meta.glob<Record<string, unknown>>('../../../../core/*/working.ts', { eager: true });
const given = import.meta.glob<{ examples: Record<string, () => Working | Working[]> }>(
  ['./*.ts', '!./index.ts'],
  { eager: true },
);

export interface Explained {
  readonly room: string;
  readonly name: string;
  /** @throws Error where no example is given */
  readonly workings: () => readonly Working[];
}

/** Every function of core that explains a reading, with the workings of its example. */
export const explained: readonly Explained[] = Object.entries(rooms).flatMap(([path, module]) => {
  const room = path.split('/').at(-2) ?? '';
  return Object.keys(module)
    .filter(name => typeof module[name] === 'function')
    .map(name => ({
      room,
      name,
      workings: () => {
        const example = given[`./${room}.ts`]?.examples[name];
        if (!example) throw new Error(`add an example of ${name} to test/core/working/examples/${room}.ts`);
        return [example()].flat();
      },
    }));
});
