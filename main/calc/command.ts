import type { ParseArgsOptionsConfig } from 'node:util';
import type { Field, Said } from '../../core/conditions/index.ts';
import type { PlainKey, Sentence } from '../../core/language/index.ts';
import type { Working } from '../../core/working/index.ts';
import type { Table } from './table.ts';

/** What the command line gives a command: the files named and its options, still as text. */
export interface CommandInput {
  readonly files: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | readonly (string | boolean)[] | undefined>>;
  /** Conditions that the options say, in the units they are said in. */
  readonly said: Partial<Said>;
  readonly read: (file: string) => Promise<string>;
  /** Standard output, for the command that streams its rows. */
  readonly write: (text: string) => void | Promise<void>;
  /** Says on standard error what has to be known beside the answer. */
  readonly note: (text: string) => void;
  /** Says how far long work has come, on standard error; silent with `--json`. */
  readonly progress: (text: string) => void;
}

export interface Report {
  /** The contract's JSON document. */
  readonly json: object;
  /** The same for reading. */
  readonly tables: readonly Table[];
  /** What has to be said beside the tables: a caution, a shortcoming. */
  readonly words?: string;
  /** What `--csv` prints; absent where no table is natural. */
  readonly csv?: Table;
  readonly workings: readonly Working[];
}

export interface Command {
  /** What stands for its files. */
  readonly usage: PlainKey;
  readonly summary: PlainKey;
  /** Conditions of core/conditions that it takes as options: parsed, checked and told by `--help`. */
  readonly conditions?: readonly Field[];
  /** Options of its own. */
  readonly options: ParseArgsOptionsConfig;
  /** What `--help` says of the options: defaults, what excludes what. */
  readonly notes?: Sentence;
  /** Files taken: at least and at most. */
  readonly files: readonly [number, number];
  /** @returns the report, or null when the command has written its rows itself. */
  run(input: CommandInput): Promise<Report | null>;
}
