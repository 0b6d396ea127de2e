import { bend } from './bend.ts';
import { carve } from './carve.ts';
import { check } from './check.ts';
import type { Command } from './command.ts';
import { identify } from './identify.ts';
import { rhythm } from './rhythm.ts';
import { run } from './run.ts';
import { set } from './set.ts';
import { shape } from './shape.ts';
import { sweep } from './sweep.ts';
import { vibrate } from './vibrate.ts';

/** The accepted commands, in the order of the question they answer. */
export const commands: Readonly<Record<string, Command>> = {
  shape,
  bend,
  vibrate,
  identify,
  carve,
  run,
  rhythm,
  set,
  check,
  sweep,
};

/** Whether a word names a command. */
export function isCommand(name: string | undefined): name is string {
  return name !== undefined && Object.hasOwn(commands, name);
}

/** Whether a word asks what the commands are. */
export const asksForHelp = (word: string | undefined): boolean => word === '--help' || word === '-h';
