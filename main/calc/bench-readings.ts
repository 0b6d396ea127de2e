import { type BenchReading, readBenchTable } from '../../core/flex/index.ts';
import { faultOf } from './fault.ts';

/**
 * Bench readings from a table with a heading line, one reading a row; a `contactLength` in m.
 *
 * @throws InputFault naming the file, the line and the column
 */
export function readBenchReadings(
  file: string,
  text: string,
  contactLength: number,
): readonly BenchReading[] {
  const read = readBenchTable(text, contactLength);
  if (read.ok) return read.readings;
  throw faultOf(file, [read.fault]);
}
