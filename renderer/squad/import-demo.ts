import { day } from '../answers/index.ts';
import { demoSheet } from '../demo/index.ts';
import { lookOver, READ, takePairs } from '../files/index.ts';
import { project, report, t } from '../state/index.ts';
import { demoLog } from './demo-log.ts';

/** Takes the demo club's sheet in at once, with an invented tune log; undo takes it out again. */
export function importDemo(): void {
  const read = lookOver(demoSheet.name, READ.sheet(demoSheet.text), project.value.rack);
  const fresh = read.pairs.filter(each => !each.known);
  if (fresh.length === 0) {
    report(t('squad.demoInRack'));
    return;
  }
  takePairs(read, fresh, entries => demoLog(entries, day.value));
}
