import { shapeWorkings, sidecut, widthRemark } from '../../core/shape/index.ts';
import { DEGREE, MM } from '../../core/units/index.ts';
import type { Command } from './command.ts';
import { skiFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { readingTable, tableOf } from './table.ts';
import { told } from './words.ts';

export const shape: Command = {
  usage: 'PAIR',
  summary: 'What radius is cut into the ski',
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
    return {
      json,
      tables: [
        readingTable(`${ski.name} (${cut.widthSource}, ${cut.waistSource})`, [
          ['sidecut depth', json.sidecutDepthMm, 'mm'],
          ['radius', json.radiusM, 'm'],
          ['radius ±', json.radiusPlusMinusM, 'm'],
          ['circle radius', json.circleRadiusM, 'm'],
          ['fitted radius', json.fittedRadiusM, 'm'],
          ['taper', json.taperDeg, '°'],
          ['waist from tail', json.waistFromTailMm, 'mm'],
        ]),
        { title: 'Local radius', ...local, rows: local.rows.filter((_, index) => index % 10 === 0) },
      ],
      csv: local,
      ...(remark === null ? {} : { words: remark }),
      workings: shapeWorkings(ski),
    };
  },
};
