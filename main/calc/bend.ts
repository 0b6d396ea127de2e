import { type BendAnswer, bendTest, DEFAULT_LOADS, flexWorkings } from '../../core/flex/index.ts';
import { MM } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { rangeOf } from './condition-options.ts';
import { answered, asking, InputFault } from './fault.ts';
import { numberList, oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { readingTable, tableOf } from './table.ts';
import { t, told } from './words.ts';

export const bend: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.bend.summary',
  options: { load: { type: 'string' }, span: { type: 'string' }, at: { type: 'string' } },
  notes: { key: 'calc.bend.notes' },
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const length = tidy(ski.contactLength / MM);
    const span = oneNumber(options, 'span', { unit: 'mm', from: 1, to: length }, length);
    const at = oneNumber(options, 'at', { unit: 'mm', from: 0, to: length }, ski.bootCentre / MM);
    const [rear, front] = [tidy((length - span) / 2), tidy((length + span) / 2)];
    if (!(at > rear && at < front)) {
      throw new InputFault(t('calc.bend.outside', { at: tidy(at), rear, front }));
    }
    const question = {
      loads: numberList(options, 'load', rangeOf('benchLoadN'), [...DEFAULT_LOADS]),
      span: span * MM,
      at: at * MM,
    };
    const answer = answered(
      file,
      asking(file, () => bendTest(ski, question)),
    );
    const json = {
      name: answer.name,
      springNPerMm: rounded(answer.springNPerMm),
      flattenN: answer.flattenN === null ? null : rounded(answer.flattenN),
      firstTouchN: rounded(answer.firstTouchN),
      curve: answer.curve.map(({ loadN, deflectionMm, flatTableDeflectionMm }) => ({
        loadN: rounded(loadN),
        deflectionMm: rounded(deflectionMm),
        flatTableDeflectionMm: rounded(flatTableDeflectionMm),
      })),
      shape: answer.shape.map(({ fromTailMm, deflectionMm }) => ({
        fromTailMm: rounded(fromTailMm),
        deflectionMm: rounded(deflectionMm),
      })),
    };
    const curve = tableOf(json.curve, [
      { name: 'loadN', decimals: 0 },
      { name: 'deflectionMm' },
      { name: 'flatTableDeflectionMm' },
    ]);
    return {
      json,
      tables: [
        readingTable(answer.name, [
          [t('calc.bend.spring'), json.springNPerMm, 'N/mm'],
          [t('calc.bend.firstTouch'), json.firstTouchN, 'N'],
          [t('calc.bend.flattened'), json.flattenN, 'N'],
        ]),
        { title: t('calc.bend.deflection'), ...curve },
      ],
      csv: curve,
      words: [...gapWords(answer), told(answer.largeBend)].join('\n'),
      workings: flexWorkings(ski, question),
    };
  },
};

/** Why no force brings the base down, where none does. */
function gapWords({ flattenN, gapLeftMm, gapLeftFromTailMm }: BendAnswer): string[] {
  if (flattenN !== null) return [];
  return [
    t('calc.bend.gap', {
      gap: { quantity: 'depthMm', value: gapLeftMm },
      at: { quantity: 'stationMm', value: gapLeftFromTailMm },
    }),
  ];
}

/** A length in mm without the last bits of a division. */
const tidy = (mm: number): number => Number(mm.toFixed(6));
