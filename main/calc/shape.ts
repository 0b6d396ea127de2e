import { shapeWorkings, sidecut, widthRemark } from '../../core/shape/index.ts';
import { DEGREE, MM } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { readingTable, tableOf } from './table.ts';
import { t, told } from './words.ts';

export const shape: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.shape.summary',
  options: {},
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const ski = await skiFrom(file, read, note);
    const unused = widthRemark(ski);
    const remark = unused && told(unused);
    // What a program reads on standard output stays as it is.
    if (remark !== null && (options.json || options.csv)) note(`${file}: ${remark}`);
    const cut = sidecut(ski);
    const json = {
      name: ski.name,
      sidecutDepthMm: rounded(cut.depth / MM),
      radiusM: rounded(cut.radius),
      radiusPlusMinusM: rounded(cut.radiusUncertainty),
      circleRadiusM: rounded(cut.circleRadius),
      fittedRadiusM: rounded(cut.fittedRadius),
      taperDeg: rounded(cut.taper / DEGREE),
      waistFromTailMm: rounded(cut.waistStation / MM),
      local: cut.local.map(({ x, radius }) => ({ fromTailMm: rounded(x / MM), radiusM: rounded(radius) })),
    };
    const local = tableOf(json.local, [{ name: 'fromTailMm', decimals: 0 }, { name: 'radiusM' }]);
    const title = t('calc.shape.title', {
      name: ski.name,
      widths: t(`shape.widthSource.${cut.widthSource}`),
      waist: t(`shape.waistSource.${cut.waistSource}`),
    });
    return {
      json,
      tables: [
        readingTable(title, [
          [t('calc.shape.depth'), json.sidecutDepthMm, 'mm'],
          [t('calc.shape.radius'), json.radiusM, 'm'],
          [t('calc.shape.plusMinus'), json.radiusPlusMinusM, 'm'],
          [t('calc.shape.circle'), json.circleRadiusM, 'm'],
          [t('calc.shape.fitted'), json.fittedRadiusM, 'm'],
          [t('calc.shape.taper'), json.taperDeg, '°'],
          [t('calc.shape.waist'), json.waistFromTailMm, 'mm'],
        ]),
        { title: t('calc.shape.local'), ...local, rows: local.rows.filter((_, index) => index % 10 === 0) },
      ],
      csv: local,
      ...(remark === null ? {} : { words: remark }),
      workings: shapeWorkings(ski),
    };
  },
};
