/** The command line, whoever starts it: `npm run calc`, or the installed program given a command. */
export { calc } from './command-line.ts';
export { asksForHelp, isCommand } from './commands.ts';
