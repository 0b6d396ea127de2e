import { describe, expect, test } from 'vitest';
import { commands } from '../../../main/calc/commands.ts';
import { run, write } from './drive.ts';

/** The pair file as it stands in the contract for other people's scripts, letter for letter. */
const EXAMPLE = `{
  "format": "turnwright.pair",
  "version": 1,
  "name": "Larch 155",
  "discipline": "SL",
  "lengthMm": 1550,
  "contactLengthMm": 1360,
  "tipWidthMm": 117, "waistWidthMm": 66, "tailWidthMm": 104,
  "waistFromTailMm": 640,
  "widthStations": [ { "fromTailMm": 0, "widthMm": 104 } ],
  "camberMm": 8,
  "bootCentreFromTailMm": 640,
  "massKg": 1.9,
  "bending": { "kind": "stations", "stations": [ { "fromTailMm": 0, "newtonM2": 40 }, { "fromTailMm": 680, "newtonM2": 260 } ] },
  "torsion": { "kind": "formula", "newtonM2": "20 + 120*(1-abs(2*s-1)^1.6)" },
  "edges": { "baseBevelDeg": 0.5, "sideAngleDeg": 87 },
  "demo": true,
  "notes": ""
}`;
const REMARK = 'The one width station given is not used: the three widths are. Stations count from 5 on.';

const file = await write('contract.pair.json', EXAMPLE);

describe("the contract's own example", () => {
  const questions: Record<string, string[]> = {
    shape: [],
    bend: ['--load', '100'],
    vibrate: [],
    carve: ['--edge', '40'],
    run: ['--turns', '2'],
    rhythm: ['--spacing', '10', '--offset', '3'],
    check: [],
    set: ['--gates', '6', '--spacing', '10', '--offset', '3', '--slope', '14'],
    sweep: ['--vary', 'camberMm=0:8:8', '--ask', 'shape'],
  };

  test('is put to every command that takes a pair', () => {
    expect([...Object.keys(questions), 'identify'].sort()).toEqual(Object.keys(commands).sort());
  });

  test.each(Object.entries(questions))('%s answers', async (command, options) => {
    const { code, out, err } = await run([command, file, ...options, '--json']);
    expect({ code, err }).toEqual({ code: 0, err: command === 'shape' ? `${file}: ${REMARK}\n` : '' });
    const documents = command === 'sweep' ? out.trim().split('\n') : [out];
    expect(documents.map(text => Object.keys(JSON.parse(text)).length > 0)).not.toContain(false);
  });

  test('shape says beside its radius that the station is not used', async () => {
    const table = await run(['shape', file]);
    expect(table).toMatchObject({ code: 0, err: '' });
    expect(table.out).toContain('Larch 155 (three widths, measured waist station)');
    expect(table.out).toContain(`\n${REMARK}\n`);
    const { out } = await run(['shape', file, '--json', '--working']);
    const { radiusM, workings } = JSON.parse(out);
    expect(workings.find((each: { key: string }) => each.key === 'shape.radius').note).toContain(REMARK);
    // L² s (1 − s)/(T + (S − T) s − W) with s = 640/1360 (the parabola through the three widths).
    const s = 640 / 1360;
    expect(radiusM).toBeCloseTo((1.36 ** 2 * s * (1 - s)) / (0.104 + 0.013 * s - 0.066), 6);
  });

  test('what standard output says does not depend on the station', async () => {
    const { widthStations: _, ...without } = JSON.parse(EXAMPLE);
    const plain = await write('without.pair.json', without);
    for (const form of ['--json', '--csv']) {
      const [one, other] = [await run(['shape', file, form]), await run(['shape', plain, form])];
      expect(one.out).toBe(other.out);
      expect([one.err, other.err]).toEqual([`${file}: ${REMARK}\n`, '']);
    }
  });
});
