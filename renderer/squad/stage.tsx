import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { SquadCautions } from './cautions.tsx';
import { ImportDialog } from './import-dialog.tsx';
import { day } from './squad-state.ts';
import { SquadTable } from './table.tsx';
import { today } from './today.ts';
import { SquadFiles, SquadTools } from './tools.tsx';

export function SquadStage(): JSX.Element {
  useEffect(() => {
    day.value = today();
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
