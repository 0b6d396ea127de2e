import { type BendAnswer, bendTest, DEFAULT_LOADS, flexWorkings } from '../../core/flex/index.ts';
import { MM } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { rangeOf } from './condition-options.ts';
import { answered, asking, InputFault } from './fault.ts';
import { numberList, oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { readingTable, tableOf } from './table.ts';
import { inWords } from './words.ts';

export const bend: Command = {
  usage: 'PAIR',
  summary: 'How the ski bends on two supports and on a flat table',
  options: { load: { type: 'string' }, span: { type: 'string' }, at: { type: 'string' } },
  notes:
    '--load N,… in newtons, several comma-separated (50 to 300 unless given); the shape is that at the last.\n' +
    '--span MM between the supports, centred on the contact length (the contact length unless given).\n' +
    '--at MM where the press stands, from the rear contact point (the boot centre unless given).',
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const length = tidy(ski.contactLength / MM);
    const span = oneNumber(options, 'span', { unit: 'mm', from: 1, to: length }, length);
    const at = oneNumber(options, 'at', { unit: 'mm', from: 0, to: length }, ski.bootCentre / MM);
    const [rear, front] = [tidy((length - span) / 2), tidy((length + span) / 2)];
    if (!(at > rear && at < front)) {
      throw new InputFault(
        `--at: ${tidy(at)} mm is not between the supports; give a place between ${rear} and ${front} mm`,
      );
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
          ['spring on two supports', json.springNPerMm, 'N/mm'],
          ['first touch on a flat table', json.firstTouchN, 'N'],
          ['whole base down', json.flattenN, 'N'],
        ]),
        { title: 'Deflection', ...curve },
      ],
      csv: curve,
      words: [...gapWords(answer), inWords(answer.largeBend)].join('\n'),
      workings: flexWorkings(ski, question),
    };
  },
};

/** Why no force brings the base down, where none does. */
function gapWords({ flattenN, gapLeftMm, gapLeftFromTailMm }: BendAnswer): string[] {
  if (flattenN !== null) return [];
  return [
    'A press on one point never brings the whole base down: however hard, a gap of ' +
      `${gapLeftMm.toFixed(2)} mm stays at ${gapLeftFromTailMm.toFixed(0)} mm.`,
  ];
}

/** A length in mm without the last bits of a division. */
const tidy = (mm: number): number => Number(mm.toFixed(6));
