/**
 * Runs from the mild to the outermost that is accepted: what is solved, what is refused and by which limit, and how
 * long each takes. Some minutes; `npx tsx test/core/run/run-sweep.ts`, with a number of random runs and a seed behind
 * it if wanted.
 */
import { solveRun } from '../../../core/run/index.ts';
import { faultsOf, gridOfRuns, type RunCase, randomRuns } from './run-cases.ts';

const [, , count = '300', seed = '2026'] = process.argv;
/** Longer is told, s of work. */
const LONG = 5;

function sweep(title: string, cases: readonly RunCase[]): void {
  const refused = new Map<string, number>();
  let solved = 0;
  let faulty = 0;
  let longest = 0;
  for (const [i, each] of cases.entries()) {
    const from = process.cpuUsage();
    const answer = solveRun(each.conditions, { outputStep: 0.02 });
    const { user, system } = process.cpuUsage(from);
    const took = (user + system) / 1e6;
    longest = Math.max(longest, took);
    if (answer.ok) solved++;
    else refused.set(answer.limit, (refused.get(answer.limit) ?? 0) + 1);
    const faults = faultsOf(each, answer);
    faulty += faults.length > 0 ? 1 : 0;
    if (took > LONG) faults.push(`took ${took.toFixed(1)} s`);
    const reported = answer.ok
      ? faults
      : [`${answer.limit} at ${answer.at.toFixed(2)} s by ${answer.by.toPrecision(2)}`, ...faults];
    if (reported.length > 0) console.log(`${each.name}: ${reported.join('; ')}`);
    if (i % 20 === 19) console.log(`${solved} of ${i + 1} solved so far`);
  }
  const limits = [...refused].map(([limit, times]) => `${limit} ${times}`).join(', ');
  console.log(
    `${title}: ${solved} of ${cases.length} solved; refused: ${limits || 'none'}; ${faulty} faulty; longest ${longest.toFixed(1)} s`,
  );
}

sweep('random', randomRuns(Number(count), Number(seed)));
sweep('grid', gridOfRuns());
