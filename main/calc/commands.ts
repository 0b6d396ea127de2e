import type { Command } from './command.ts';

/** The accepted commands, in the order of the question they answer. */
export const commands: Readonly<Record<string, Command>> = {};

export function isCommand(name: string | undefined): name is string {
  return name !== undefined && Object.hasOwn(commands, name);
}
