import { describe, expect, it } from 'vitest';
import { demoPairs } from '../../../renderer/demo/index.ts';
import { readingGroups } from '../../../renderer/print/sheet-readings.ts';

const larch = demoPairs[0]!;
const rows = new Map(readingGroups(larch, 'metric').flatMap(group => group.rows));

describe('the readings of a pair sheet', () => {
  it('carry the measuring uncertainty', () => {
    expect(rows.get('Waist')).toBe('66.0 ± 0.3\u00a0mm');
    expect(rows.get('Overall length')).toBe('1550 ± 1\u00a0mm');
    expect(rows.get('Sidecut radius')).toMatch(/^1\d\.\d+ ± 0\.\d+\u00a0m$/);
  });

  it('say what was taken where the file gives nothing', () => {
    const { camberMm: _camber, bending: _bending, ...bare } = larch;
    const reported = new Map(readingGroups(bare as typeof larch, 'metric').flatMap(group => group.rows));
    expect(reported.get('Camber')).toBe('none given');
    expect(reported.get('Bending stiffness')).toBe('not given');
  });

  it('say it in the chosen system', () => {
    const { bootSoleMm: _sole, bootCentreFromTailMm: _centre, edges: _edges, ...bare } = { ...larch };
    const reported = (system: 'metric' | 'imperial') =>
      new Map(readingGroups(bare as typeof larch, system).flatMap(group => group.rows));
    expect(reported('metric').get('Boot sole')).toBe('300\u00a0mm (none given)');
    expect(reported('imperial').get('Boot sole')).toBe('11.81\u00a0in (none given)');
    expect(reported('imperial').get('Boot centre from rear contact')).toBe(
      '0.47 × contact length (none given)',
    );
    expect(reported('imperial').get('Side-edge angle')).toBe('90° (none given)');
  });

  it('leave out the plate and the boot of a pair that states neither', () => {
    const titles = (pair: typeof larch) => readingGroups(pair, 'metric').map(({ title }) => title);
    expect(titles(larch)).not.toContain('Plate');
    const plate = { fromTailMm: 390, lengthMm: 480, newtonM2: 60 };
    expect(titles({ ...larch, plate })).toContain('Plate');
    expect(titles({ ...larch, standingHeightMm: 48 })).toContain('Boot on the ski');
  });

  it('state the springs of a pair with a stiffness', () => {
    expect(rows.get('Under the boot')).toMatch(/N\/mm$/);
    expect(Number.parseFloat(rows.get('Shovel over tail')!)).toBeGreaterThan(0.2);
  });
});
