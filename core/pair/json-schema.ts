import * as z from 'zod';
import { pairSchema } from './pair-schema.ts';

/**
 * The pair file as JSON Schema (draft 2020-12), for editors and other people's scripts. Relations between
 * fields (the waist is the narrowest, stations ascend) are beyond it; `checkPair` has them.
 */
export function pairJsonSchema(): Record<string, unknown> {
  const { $schema, ...body } = z.toJSONSchema(pairSchema) as Record<string, unknown>;
  return {
    $schema,
    title: 'Turnwright pair file',
    description: 'A pair of skis. Stations are measured from the rear contact point.',
    ...body,
  };
}
