import { skiOf } from '../../core/pair/index.ts';
import { categories, checkPair, disciplines } from '../../core/rules/index.ts';
import { shapeWorkings } from '../../core/shape/index.ts';
import type { Command } from './command.ts';
import { oneOf } from './option.ts';
import { pairFrom } from './pair-input.ts';
import { rounded } from './quantity.ts';

export const check: Command = {
  usage: 'PAIR',
  summary: 'The pair against the competition limits of a dated edition',
  options: { discipline: { type: 'string' }, category: { type: 'string' } },
  files: [1, 1],
  async run({ files: [file], options, read }) {
    const discipline = oneOf(options, 'discipline', disciplines) ?? undefined;
    const category = oneOf(options, 'category', categories) ?? 'men';
    const pair = await pairFrom(file, read);
    const result = checkPair(pair, { discipline, category });
    const items = result.items.map(({ rule, limit, found, plusMinus, verdict, status }) => ({
      rule,
      limit,
      found: found === null ? null : rounded(found),
      plusMinus: plusMinus === null ? null : rounded(plusMinus),
      verdict,
      status,
    }));
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
        caution: result.caution,
      },
      tables: [table],
      csv: table,
      words: result.caution,
      workings: shapeWorkings(skiOf(pair)),
    };
  },
};
