import { useSignal } from '@preact/signals';
import { group } from 'd3';
import type { JSX } from 'preact';
import type { Key } from '../../core/language/index.ts';
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
import { t } from '../state/index.ts';

const MOST_LINES = 300;
const SEPARATORS = {
  ',': 'squad.separator.comma',
  ';': 'squad.separator.semicolon',
  '\t': 'squad.separator.tab',
  '|': 'squad.separator.bar',
} as const;

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
  const readAs = used.map(({ heading, field }) =>
    t('squad.columnAs', { heading, field: fieldLabel(field!) }),
  );
  return (
    <Dialog
      title={t('squad.import', { name: read.fileName })}
      onClose={nextSheet}
      footer={
        <>
          {problems.length > 0 && (
            <button type="button" onClick={() => void saveFaults(read)}>
              {t('squad.saveFaults')}
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
            {t('squad.importPairs', { count: taken.length })}
          </button>
        </>
      }
    >
      <div class="import">
        <p>
          <strong>{t('squad.pairsRead', { count: read.pairs.length })}</strong>
          {read.refused.length > 0 ? `, ${t('squad.linesNotRead', { count: read.refused.length })}` : '.'}{' '}
          {t('squad.separatedBy', { what: t(SEPARATORS[separator]) })}
        </p>
        {read.note && <p>{read.note}</p>}
        {sheetsWaiting.value > 0 && (
          <p class="soft">{t('squad.moreSheets', { count: sheetsWaiting.value })}</p>
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
            {t('squad.leaveOut', { count: known })}
          </label>
        )}
        <p class="soft">
          {t('squad.readAs', { columns: readAs.length > 0 ? readAs : t('squad.noColumn') })}
          {unused.length > 0 &&
            ` ${t('squad.keptAsTheyStand', { columns: unused.map(column => column.label) })}`}
        </p>
        <Lines lines={read.lines} />
      </div>
    </Dialog>
  );
}

const TITLES = {
  'not taken in': 'squad.notImported',
  'field left out': 'squad.fieldLeftOut',
  odd: 'squad.odd',
  guess: 'squad.guesses',
} as const satisfies Record<SheetLine['kind'], Key>;

/** Where the lines are that are too many to be listed. */
const MORE = {
  'not taken in': 'squad.moreInFile',
  'field left out': 'squad.moreInFile',
  odd: 'squad.moreOdd',
  guess: 'squad.moreGuesses',
} as const satisfies Record<SheetLine['kind'], Key>;

const linesOf = (group: readonly SheetLine[]): string => {
  const count = new Set(group.map(line => line.row)).size;
  return t('common.lines', { count });
};

function Lines({ lines }: { lines: readonly SheetLine[] }): JSX.Element {
  if (lines.length === 0) return <p>{t('squad.nothingWrong')}</p>;
  const groups = group(lines, line => line.kind);
  return (
    <>
      {(Object.keys(TITLES) as SheetLine['kind'][]).map(kind => {
        const group = groups.get(kind);
        if (!group) return null;
        return (
          <section key={kind}>
            <h3>{t(TITLES[kind], { lines: linesOf(group) })}</h3>
            <ul class="import-lines">
              {group.slice(0, MOST_LINES).map((line, at) => (
                <li key={at}>
                  <span class="soft">{t('squad.line', { line: line.row })}</span> {line.message}
                </li>
              ))}
            </ul>
            {group.length > MOST_LINES && (
              <p class="soft">{t(MORE[kind], { count: group.length - MOST_LINES })}</p>
            )}
          </section>
        );
      })}
    </>
  );
}
