import { type FieldFault, throwFaults } from '../fault/index.ts';
import { problemsWith, readJson, shown } from '../pair/index.ts';
import { type Edition, editionSchema } from './edition.ts';

/** All disciplines, categories and years of a rulebook have fewer. */
const MOST_LIMITS = 1000;

/**
 * Reads an edition file.
 *
 * @throws FieldError for the first field at fault, with the others behind it
 */
export function readEdition(text: string): Edition {
  const json = readJson(text);
  const data = json.ok ? json.value : undefined;
  throwFaults(json.ok ? faultsOf(data) : json.problems);
  return editionSchema.parse(data);
}

function faultsOf(data: unknown): readonly FieldFault[] {
  const version = (data as { version?: unknown } | null)?.version;
  if (typeof version === 'number' && version > 1) {
    const because = { key: 'rules.newerEdition', values: { version } } as const;
    return [{ field: 'version', found: version, accepted: { oneOf: [1] }, because }];
  }
  // Each limit of a file of anything else would be told by several faults of its own.
  const { limits } = (data ?? {}) as { limits?: unknown };
  if (Array.isArray(limits) && limits.length > MOST_LIMITS) {
    return [
      {
        field: 'limits',
        found: shown(limits),
        accepted: { key: 'rules.atMostLimits', values: { most: MOST_LIMITS } },
      },
    ];
  }
  return problemsWith(editionSchema, data);
}
