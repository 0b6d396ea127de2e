import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkSetting, lineThroughGates, readGates } from '../../../core/course/index.ts';

const read = (name: string) =>
  readGates(readFileSync(new URL(`../../../renderer/demo/sets/${name}.csv`, import.meta.url), 'utf8'));

describe('the demo sets', () => {
  it.each([
    ['slalom', 56, 'SL', 20],
    ['giant-slalom', 38, 'GS', 16.5],
  ] as const)(
    '%s: %d gates within the setting rules, and a line passes them',
    (name, count, discipline, degrees) => {
      const { gates, problems } = read(name);
      expect(problems).toEqual([]);
      expect(gates).toHaveLength(count);
      const slope = (degrees * Math.PI) / 180;
      expect(checkSetting(gates, { discipline, category: 'men', slope }).verdict).toBe('passes');
      expect(lineThroughGates(gates).length).toBeGreaterThan(gates[gates.length - 1].y - gates[0].y);
    },
  );
});
