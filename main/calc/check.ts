import type { Quantity, Sentence, Value } from '../../core/language/index.ts';
import { skiOf } from '../../core/pair/index.ts';
import {
  categories,
  checkPair,
  controlRadius,
  controlRadiusWorking,
  controlReadingsOf,
  disciplines,
  type Edition,
  editionText,
  missingReadings,
  type PairCheck,
  readEdition,
  type StatedControl,
  statedReading,
  statedStations,
  threeReadingsWorking,
} from '../../core/rules/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import type { Command, CommandInput } from './command.ts';
import { expectKind } from './expect-kind.ts';
import { asking } from './fault.ts';
import { oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';
import { tableOf } from './table.ts';
import { t, told, toldAll } from './words.ts';

export const check: Command = {
  usage: 'calc.usage.pair',
  summary: 'calc.check.summary',
  options: {
    discipline: { type: 'string' },
    category: { type: 'string' },
    edition: { type: 'string' },
    'lower-level': { type: 'boolean' },
  },
  notes: {
    key: 'calc.check.notes',
    values: { disciplines: disciplines.join(', '), categories: categories.join(', ') },
  },
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
      limit: told(limit),
      found: found === null ? null : rounded(found),
      plusMinus: plusMinus === null ? null : rounded(plusMinus),
      verdict,
      status,
    }));
    const readings = controlReadingsOf(pair.control);
    const three = result.items.some(({ control }) => control?.used === 'three readings');
    const columns = (['rule', 'limit', 'found', 'plusMinus', 'verdict', 'status'] as const).map(name => ({
      name,
    }));
    const spoken = items.map(item => ({
      ...item,
      rule: told(editionText(item.rule)),
      verdict: t(`rules.verdict.${item.verdict}`),
      status: t(`calc.status.${item.status}`),
    }));
    const title = t('calc.check.title', {
      name: pair.name,
      discipline: result.discipline,
      category: t(`category.${result.category}`),
      edition: editionText(result.edition),
      verdict: t(`rules.verdict.${result.verdict}`),
    });
    return {
      json: {
        name: pair.name,
        edition: result.edition,
        discipline: result.discipline,
        category: result.category,
        verdict: result.verdict,
        items,
        ...controlJson(pair.control, result),
        caution: toldAll(result.caution),
      },
      tables: [{ title, ...tableOf(spoken, columns) }],
      csv: tableOf(items, columns),
      words: [
        ...controlWords(pair.control),
        ...result.items.flatMap(({ rule, note }) =>
          note ? [`${told(editionText(rule))}: ${told(note)}.`] : [],
        ),
        toldAll(result.caution),
      ].join('\n'),
      workings: [
        ...(three ? [threeReadingsWorking(readings)] : []),
        ...(three ? readings : readings.slice(0, 1)).map(controlRadiusWorking),
        ...shapeWorkings(skiOf(pair)),
      ],
    };
  },
};

/** @throws InputFault naming the file and its first faulty field */
async function editionFrom(file: string, read: CommandInput['read']): Promise<Edition> {
  const text = expectKind(file, await read(file), 'edition');
  return asking(file, () => readEdition(text));
}

/** Where the control reads its widths, which readings it has and which of them the radius checked is of. */
function controlJson(stated: StatedControl | undefined, { items }: PairCheck) {
  const stations = statedStations(stated);
  if (stations === null) return {};
  const finding = items.find(({ control }) => control !== null)?.control ?? null;
  const radii = controlReadingsOf(stated).map(controlRadius);
  return {
    control: {
      frontFromTailMm: rounded(stations.frontMm),
      rearFromTailMm: rounded(stations.rearMm),
      betweenMm: rounded(stations.distanceMm),
      missing: missingFields(stated),
      radiiM: radii.map(rounded),
      used: finding?.used ?? (radii.length > 0 ? 'first reading' : 'none'),
      ...(finding?.procedure && { comparedM: rounded(finding.compared), procedure: finding.procedure }),
    },
  };
}

/** Fields of the control that are still to be measured; of a reading after the first once it is begun. */
const missingFields = (stated: StatedControl | undefined): string[] =>
  [0, 1, 2].flatMap(nth => {
    const reading = statedReading(stated, nth);
    if (nth > 0 && reading === undefined) return [];
    return missingReadings(reading).map(({ field }) => (nth === 0 ? field : `repeats[${nth - 1}].${field}`));
  });

/** Where the control reads its widths, and what of its measurement is still to be taken. */
function controlWords(stated: StatedControl | undefined): string[] {
  if (stated === undefined) return [];
  const [first, ...later] = [missingReadings(stated), ...(stated.repeats ?? []).map(missingReadings)];
  const stations = statedStations(stated);
  const listed = (missing: typeof first, at: string): Value =>
    missing.map(({ field, meaning }): Sentence => {
      return { key: 'calc.check.missing', values: { field: `${at}.${field}`, meaning } };
    });
  const mm = (value: number): Quantity => ({ quantity: 'stationMm', value });
  return [
    ...(stations
      ? [
          t('calc.check.stations', {
            front: mm(stations.frontMm),
            rear: mm(stations.rearMm),
            between: mm(stations.distanceMm),
          }),
        ]
      : []),
    first.length === 0
      ? t('calc.check.complete')
      : t('calc.check.incomplete', { missing: listed(first, 'control') }),
    ...later.flatMap((missing, i) => {
      if (missing.length === 0) return [];
      const values = { nth: i + 2, missing: listed(missing, `control.repeats[${i}]`) };
      return [t('calc.check.readingIncomplete', values)];
    }),
  ];
}
