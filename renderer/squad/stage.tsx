import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { day, today } from '../answers/index.ts';
import { importFile } from '../files/index.ts';
import { t } from '../state/index.ts';
import { SquadCautions } from './cautions.tsx';
import { ImportDialog } from './import-dialog.tsx';
import { SquadTable } from './table.tsx';
import { SquadFiles, SquadTools } from './tools.tsx';

/** Rows copied from a spreadsheet come as text with tabs; pasted on the page they go the way of a file. */
function onPaste(event: ClipboardEvent): void {
  const at = event.target;
  const typing = at instanceof HTMLInputElement ? at.type !== 'checkbox' && at.type !== 'radio' : false;
  const text = event.clipboardData?.getData('text/plain') ?? '';
  if (typing || at instanceof HTMLTextAreaElement || document.querySelector('dialog[open]')) return;
  if (text.trim() === '') return;
  event.preventDefault();
  importFile({ name: t('squad.pastedRows'), text }, 'sheet');
}

export function SquadStage(): JSX.Element {
  useEffect(() => {
    day.value = today();
    document.addEventListener('paste', onPaste);
    return () => document.removeEventListener('paste', onPaste);
  }, []);
  return (
    <div class="squad">
      <SquadTools />
      <SquadTable />
      <SquadFiles />
      <SquadCautions />
      <ImportDialog />
    </div>
  );
}
