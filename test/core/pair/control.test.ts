import { describe, expect, it } from 'vitest';
import { say } from '../../../core/language/index.ts';
import { checkPair, type Pair, readPair, writePair } from '../../../core/pair/index.ts';
import { larch } from './larch.ts';

describe('what only the control and the technician ask for', () => {
  const control = {
    developedLengthMm: 1560,
    tailToWaistMm: 700,
    frontWidthMm: 104,
    rearWidthMm: 96.5,
    waistWidthMm: 66,
  };
  const stated = {
    ...larch,
    owner: 'An invented junior',
    control,
    standingHeightMm: 49,
    bootSoleHeightMm: 42,
  };

  it('is kept on saving, each in its place, also when half of it is still missing', () => {
    const written = writePair(stated as unknown as Pair);
    const read = readPair(written);
    expect(read).toMatchObject({ ok: true, pair: stated });
    const half = { ...stated, control: { developedLengthMm: 1560, later: 'kept' } };
    expect(readPair(JSON.stringify(half))).toMatchObject({ ok: true, pair: half });
  });

  it('holds at most two further readings, each as far as it was taken', () => {
    const repeats = [
      { ...control, frontWidthMm: 103.8 },
      { developedLengthMm: 1561, later: 'kept' },
    ];
    const three = { ...stated, control: { ...control, repeats } };
    expect(readPair(writePair(three as unknown as Pair))).toMatchObject({ ok: true, pair: three });
    const wrong = (further: unknown) =>
      checkPair({ ...stated, control: { ...control, repeats: further } })[0];
    expect(wrong([{}, {}, {}])).toMatchObject({
      field: 'control.repeats',
      accepted: { key: 'accepted.list', values: { least: 0, most: 2 } },
    });
    expect(wrong([{}, 12])).toMatchObject({ field: 'control.repeats[1]' });
    expect(say(wrong([{ rearWidthMm: 20 }]))).toMatch(
      /control\.repeats\[0\]\.rearWidthMm: 20 .* 40 to 250 mm/,
    );
    expect(say(wrong([{}, { ...control, waistWidthMm: 110 }]))).toMatch(
      /control\.repeats\[1\]\.waistWidthMm: 110 is not narrower than control\.repeats\[1\]\.frontWidthMm 104/,
    );
  });

  it.each([
    [{ owner: 7 }, 'owner', /owner: 7 is not accepted; accepted is text of at most 120 characters/],
    [{ control: 30 }, 'control', /accepted is \{ developedLengthMm\?/],
    [{ control: { ...control, frontWidthMm: '104' } }, 'control.frontWidthMm', /a number from 40 to 250 mm/],
    [{ control: { ...control, tailToWaistMm: 1600 } }, 'control.tailToWaistMm', /1600 is not on a ski of/],
    [
      { control: { ...control, waistWidthMm: 97 } },
      'control.waistWidthMm',
      /97 is not narrower than control.rear/,
    ],
    [{ standingHeightMm: 500 }, 'standingHeightMm', /accepted is a number from 10 to 120 mm/],
    [{ bootSoleHeightMm: 0 }, 'bootSoleHeightMm', /accepted is a number from 10 to 120 mm/],
  ])('is refused where it cannot be: %o', (change, field, message) => {
    const [problem] = checkPair({ ...stated, ...change });
    expect(problem.field).toBe(field);
    expect(say(problem)).toMatch(message);
  });
});
