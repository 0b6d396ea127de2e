import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkSetting, readGates } from '../../../core/course/index.ts';

const read = (name: string) =>
  readGates(readFileSync(new URL(`../../../renderer/demo/sets/${name}.csv`, import.meta.url), 'utf8'));

describe('the demo sets', () => {
  it.each([
    ['slalom', 56, 'SL', 20],
    ['giant-slalom', 38, 'GS', 16.5],
  ] as const)(
    '%s: %d gates within the setting rules of men and of children',
    (name, count, discipline, degrees) => {
      const { gates, problems } = read(name);
      expect(problems).toEqual([]);
      expect(gates).toHaveLength(count);
      const slope = (degrees * Math.PI) / 180;
      for (const category of ['men', 'children'] as const) {
        expect(checkSetting(gates, { discipline, category, slope }).verdict).toBe('passes');
      }
    },
  );
});
