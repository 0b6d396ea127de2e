import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuilt, projectRoot } from '../main/tools/index.ts';
import { ensureBrowser } from './e2e/support/browser.ts';

interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/** `npm test -- --quick`: no build, no browser, and of the rest only what is not marked `@module-tag slow`. */
const quick = process.argv.includes('--quick');

/**
 * Runs one suite and counts. A file that fails before its first test counts as one failure, and so does a test
 * that was skipped, but for those a quick run leaves out.
 */
function runSuite(config: string): { passed: number; failed: number } {
  const reportFile = join(projectRoot, 'build', `report-${config.replaceAll('/', '-')}.json`);
  rmSync(reportFile, { force: true });
  const vitest = join(projectRoot, 'node_modules/vitest/vitest.mjs');
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`];
  const { status } = spawnSync(
    process.execPath,
    [vitest, 'run', '--config', config, ...reporters, ...(quick ? ['--tags-filter=!slow'] : [])],
    {
      cwd: projectRoot,
      stdio: 'inherit',
    },
  );
  try {
    const report: Report = JSON.parse(readFileSync(reportFile, 'utf8'));
    const unopened = report.testResults.filter(
      file => file.status === 'failed' && file.assertionResults.length === 0,
    );
    const skipped = quick ? 0 : report.numPendingTests;
    const failed = report.numFailedTests + skipped + unopened.length;
    return { passed: report.numPassedTests, failed: status === 0 ? failed : Math.max(failed, 1) };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

/** `npm test -- --cases 50000 --seed 7`: how many cases the readers of `test/faults` are given, and which. */
for (const [option, variable] of [
  ['--cases', 'TURNWRIGHT_CASES'],
  ['--seed', 'TURNWRIGHT_SEED'],
] as const) {
  const given = process.argv[process.argv.indexOf(option) + 1];
  if (process.argv.includes(option)) process.env[variable] = given;
}

/** `npm test -- --renew-charts`: draws every chart anew into its record, to be looked at in the diff. */
if (process.argv.includes('--renew-charts')) {
  const vitest = join(projectRoot, 'node_modules/vitest/vitest.mjs');
  const charts = [vitest, 'run', '--config', 'test/vitest.config.ts', 'test/renderer/charts'];
  rmSync(join(projectRoot, 'test/renderer/charts/recorded'), { recursive: true, force: true });
  const env = { ...process.env, RENEW_CHARTS: '1' };
  process.exit(spawnSync(process.execPath, charts, { cwd: projectRoot, stdio: 'inherit', env }).status ?? 1);
}

/** `npm test -- --renew-checklist`: puts the line numbers of DEVELOPERS.md's security table right. */
if (process.argv.includes('--renew-checklist')) process.env.RENEW_CHECKLIST = '1';

if (!quick) {
  ensureBrowser(console.log);
  ensureBuilt(console.log);
}
const suites = ['test/vitest.config.ts', ...(quick ? [] : ['test/e2e/vitest.config.ts'])].map(runSuite);
const passed = suites.reduce((sum, suite) => sum + suite.passed, 0);
const failed = suites.reduce((sum, suite) => sum + suite.failed, 0);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
