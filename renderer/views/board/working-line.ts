import { formatQuantity, type MeasureName, type System } from '../../../core/units/index.ts';
import type { Working } from '../../../core/working/index.ts';

const MEASURES: Readonly<Record<string, MeasureName>> = {
  m: 'radius',
  N: 'force',
  rad: 'angle',
  'm/s': 'speed',
};

/** The result of a working in one line, in the system shown. */
export function workingLine({ result }: Working, system: System): string {
  const measure = MEASURES[result.unit];
  return measure ? formatQuantity(result.value, measure, { system }).text : `${result.value} ${result.unit}`;
}
