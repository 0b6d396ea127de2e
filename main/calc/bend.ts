import { bendTest, DEFAULT_LOADS, flexWorkings } from '../../core/flex/index.ts';
import type { Command } from './command.ts';
import { answered, asking } from './fault.ts';
import { numberList, oneNumber } from './option.ts';
import { skiFrom } from './pair-input.ts';
import { MM, rounded } from './quantity.ts';

export const bend: Command = {
  usage: 'PAIR',
  summary: 'How the ski bends on two supports and on a flat table',
  options: { load: { type: 'string' }, span: { type: 'string' }, at: { type: 'string' } },
  files: [1, 1],
  async run({ files: [file], options, read }) {
    const ski = await skiFrom(file, read);
    const length = ski.contactLength / MM;
    const question = {
      loads: numberList(options, 'load', { unit: 'N', from: 0, to: 20_000 }, [...DEFAULT_LOADS]),
      span: oneNumber(options, 'span', { unit: 'mm', from: 1, to: length }, length) * MM,
      at: oneNumber(options, 'at', { unit: 'mm', from: 0, to: length }, ski.bootCentre / MM) * MM,
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
    const curve = {
      columns: [
        { name: 'loadN', decimals: 0 },
        { name: 'deflectionMm', decimals: 2 },
        { name: 'flatTableDeflectionMm', decimals: 2 },
      ],
      rows: json.curve.map(point => [point.loadN, point.deflectionMm, point.flatTableDeflectionMm]),
    };
    return {
      json,
      tables: [
        {
          title: answer.name,
          columns: [{ name: 'reading' }, { name: 'value' }, { name: 'unit' }],
          rows: [
            ['spring on two supports', json.springNPerMm, 'N/mm'],
            ['first touch on a flat table', json.firstTouchN, 'N'],
            ['whole base down', json.flattenN, 'N'],
          ],
        },
        { title: 'Deflection', ...curve },
      ],
      csv: curve,
      words: answer.largeBend,
      workings: flexWorkings(ski),
    };
  },
};
