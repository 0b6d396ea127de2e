import { useSignal } from '@preact/signals';
import { group } from 'd3';
import type { JSX } from 'preact';
import { FAULT_HEADING } from '../../core/pair/index.ts';
import {
  looking,
  nextSheet,
  type SheetImport,
  type SheetLine,
  saveFaults,
  sheetsWaiting,
  takePairs,
} from '../files/index.ts';
import { Dialog } from '../kit/index.ts';
import { fieldLabel } from '../rack/index.ts';

const MOST_LINES = 300;
const SEPARATORS = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars' } as const;

/** A sheet laid out before it is taken in: what was read, what was guessed, what is wrong, line by line. */
export function ImportDialog(): JSX.Element | null {
  const read = looking.value;
  return read && <LookOver key={read.fileName} read={read} />;
}

function LookOver({ read }: { read: SheetImport }): JSX.Element {
  const leaveOut = useSignal(true);
  const known = read.pairs.filter(each => each.known).length;
  const taken = leaveOut.value ? read.pairs.filter(each => !each.known) : read.pairs;
  const { problems, columns, separator } = read.sheet;
  const used = columns.filter(column => column.field !== null);
  const unused = columns.filter(
    column => column.field === null && column.heading !== '' && column.heading !== FAULT_HEADING,
  );
  const count = (many: number) => (many === 1 ? '1 pair' : `${many} pairs`);
  return (
    <Dialog
      title={`Import ${read.fileName}`}
      onClose={nextSheet}
      footer={
        <>
          {problems.length > 0 && (
            <button type="button" onClick={() => void saveFaults(read)}>
              Save lines at fault as CSV…
            </button>
          )}
          <button
            type="button"
            class="primary"
            disabled={taken.length === 0}
            onClick={event => {
              takePairs(read, taken);
              event.currentTarget.closest('dialog')?.close();
            }}
          >
            Take in {count(taken.length)}
          </button>
        </>
      }
    >
      <div class="import">
        <p>
          <strong>{count(read.pairs.length)} read</strong>
          {read.refused.length > 0 &&
            `, ${read.refused.length === 1 ? '1 line' : `${read.refused.length} lines`} could not be`}
          . Columns are separated by {SEPARATORS[separator]}.
        </p>
        {read.note && <p>{read.note}</p>}
        {sheetsWaiting.value > 0 && (
          <p class="soft">{sheetsWaiting.value} more to look over after this one.</p>
        )}
        {known > 0 && (
          <label class="import-known">
            <input
              type="checkbox"
              checked={leaveOut.value}
              onChange={event => {
                leaveOut.value = event.currentTarget.checked;
              }}
            />
            Leave out {count(known)} that the rack has already
          </label>
        )}
        <p class="soft">
          Read as:{' '}
          {used.map(column => `${column.heading} → ${fieldLabel(column.field!)}`).join(', ') ||
            'no column known here'}
          .
          {unused.length > 0 &&
            ` Kept with each pair as they stand: ${unused.map(column => column.label).join(', ')}.`}
        </p>
        <Lines lines={read.lines} />
      </div>
    </Dialog>
  );
}

const TITLES: Record<SheetLine['kind'], string> = {
  'not taken in': 'Not taken in',
  'field left out': 'Taken in without the field at fault',
  odd: 'Worth a second look',
  guess: 'Guesses made',
};

/** Where the lines are that are too many to be listed. */
const MORE: Record<SheetLine['kind'], string> = {
  'not taken in': '; the file of lines at fault holds every one.',
  'field left out': '; the file of lines at fault holds every one.',
  odd: '; “Look again” on the squad’s page shows every one.',
  guess: ' of the same kinds.',
};

const linesOf = (group: readonly SheetLine[]): string => {
  const count = new Set(group.map(line => line.row)).size;
  return count === 1 ? '1 line' : `${count} lines`;
};

function Lines({ lines }: { lines: readonly SheetLine[] }): JSX.Element {
  if (lines.length === 0) return <p>Nothing is wrong with it and nothing had to be guessed.</p>;
  const groups = group(lines, line => line.kind);
  return (
    <>
      {(Object.keys(TITLES) as SheetLine['kind'][]).map(kind => {
        const group = groups.get(kind);
        if (!group) return null;
        return (
          <section key={kind}>
            <h3>
              {TITLES[kind]} ({linesOf(group)})
            </h3>
            <ul class="import-lines">
              {group.slice(0, MOST_LINES).map((line, at) => (
                <li key={at}>
                  <span class="soft">line {line.row}</span> {line.message}
                </li>
              ))}
            </ul>
            {group.length > MOST_LINES && (
              <p class="soft">
                and {group.length - MOST_LINES} more{MORE[kind]}
              </p>
            )}
          </section>
        );
      })}
    </>
  );
}
