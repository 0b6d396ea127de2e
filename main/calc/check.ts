import { skiOf } from '../../core/pair/index.ts';
import {
  categories,
  checkPair,
  controlOf,
  controlRadiusWorking,
  disciplines,
  missingReadings,
  type StatedControl,
  statedStations,
} from '../../core/rules/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import type { Command } from './command.ts';
import { oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';

export const check: Command = {
  usage: 'PAIR',
  summary: 'The pair against the competition limits of a dated edition',
  options: { discipline: { type: 'string' }, category: { type: 'string' } },
  notes: `--discipline ${disciplines.join(', ')} (the file’s own unless given).\n--category ${categories.join(', ')} (men unless given).`,
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const discipline = oneOf(options, 'discipline', disciplines) ?? undefined;
    const category = oneOf(options, 'category', categories) ?? 'men';
    const pair = await pairFrom(file, read, note);
    const result = checkPair(pair, { discipline, category });
    const items = result.items.map(({ rule, limit, found, plusMinus, verdict, status }) => ({
      rule,
      limit,
      found: found === null ? null : rounded(found),
      plusMinus: plusMinus === null ? null : rounded(plusMinus),
      verdict,
      status,
    }));
    const stations = statedStations(pair.control);
    const control = controlOf(pair.control);
    const table = {
      title: `${pair.name}, ${result.discipline}, ${result.category}, edition ${result.edition}: ${result.verdict}`,
      columns: [
        { name: 'rule' },
        { name: 'limit' },
        { name: 'found' },
        { name: 'plusMinus' },
        { name: 'verdict' },
        { name: 'status' },
      ],
      rows: items.map(({ rule, limit, found, plusMinus, verdict, status }) => [
        rule,
        limit,
        found,
        plusMinus,
        verdict,
        status,
      ]),
    };
    return {
      json: {
        name: pair.name,
        edition: result.edition,
        discipline: result.discipline,
        category: result.category,
        verdict: result.verdict,
        items,
        ...(stations && {
          control: {
            frontFromTailMm: rounded(stations.frontMm),
            rearFromTailMm: rounded(stations.rearMm),
            betweenMm: rounded(stations.distanceMm),
            missing: missingReadings(pair.control).map(({ field }) => field),
          },
        }),
        caution: result.caution,
      },
      tables: [table],
      csv: table,
      words: [...controlWords(pair.control), result.caution].join('\n'),
      workings: [...(control ? [controlRadiusWorking(control)] : []), ...shapeWorkings(skiOf(pair))],
    };
  },
};

/** Where the control reads its widths, and what of its measurement is still to be taken. */
function controlWords(stated: StatedControl | undefined): string[] {
  if (stated === undefined) return [];
  const missing = missingReadings(stated);
  const stations = statedStations(stated);
  return [
    ...(stations
      ? [
          `Control stations from the tail: S at ${stations.frontMm.toFixed(0)} mm, H at ` +
            `${stations.rearMm.toFixed(0)} mm, ${stations.distanceMm.toFixed(0)} mm apart.`,
        ]
      : []),
    missing.length === 0
      ? 'Length, waist and radius are those of the control measurement in the file.'
      : `The control measurement is not complete, so catalogue widths are used; missing: ${missing
          .map(({ field, meaning }) => `control.${field} (${meaning})`)
          .join(', ')}.`,
  ];
}
