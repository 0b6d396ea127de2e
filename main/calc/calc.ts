import { calc } from './command-line.ts';

// Setting the code instead of exiting lets a pipe drain first.
process.exitCode = await calc(process.argv.slice(2));
