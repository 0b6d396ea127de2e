import { skiOf } from '../../core/pair/index.ts';
import {
  categories,
  checkPair,
  controlOf,
  controlRadiusWorking,
  disciplines,
  type Edition,
  EditionError,
  missingReadings,
  readEdition,
  type StatedControl,
  statedStations,
} from '../../core/rules/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import type { Command, CommandInput } from './command.ts';
import { InputFault } from './fault.ts';
import { oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';

export const check: Command = {
  usage: 'PAIR',
  summary: 'The pair against the competition limits of a dated edition',
  options: {
    discipline: { type: 'string' },
    category: { type: 'string' },
    edition: { type: 'string' },
    'lower-level': { type: 'boolean' },
  },
  notes: `--discipline ${disciplines.join(', ')} (the file’s own unless given).\n--category ${categories.join(', ')} (men unless given).`,
  files: [1, 1],
  async run({ files: [file], options, read, note }) {
    const discipline = oneOf(options, 'discipline', disciplines) ?? undefined;
    const category = oneOf(options, 'category', categories) ?? 'men';
    const pair = await pairFrom(file, read, note);
    const edition =
      typeof options.edition === 'string' ? await editionFrom(options.edition, read) : undefined;
    const lowerLevel = options['lower-level'] === true;
    const result = checkPair(pair, { discipline, category, edition, lowerLevel });
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
      words: [
        ...controlWords(pair.control),
        ...result.items.flatMap(({ rule, note }) => (note ? [`${rule}: ${note}.`] : [])),
        result.caution,
      ].join('\n'),
      workings: [...(control ? [controlRadiusWorking(control)] : []), ...shapeWorkings(skiOf(pair))],
    };
  },
};

/** @throws InputFault naming the file and its first faulty field */
async function editionFrom(file: string, read: CommandInput['read']): Promise<Edition> {
  const text = await read(file);
  try {
    return readEdition(text);
  } catch (error) {
    if (!(error instanceof EditionError)) throw error;
    const [first, ...more] = error.problems;
    throw new InputFault(`${file}: ${first}${more.length > 0 ? ` (and ${more.length} more)` : ''}`);
  }
}

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
