import { effect } from '@preact/signals';
import { asked, tableOf } from '../answers/index.ts';
import { activePair, fileStem, project, report, t } from '../state/index.ts';
import { PairSheet } from './pair-sheet.tsx';
import { printPaper } from './paper.tsx';

/** Paper waits this long for the bent ski's radii; without them the cosine rule stands alone. */
const PATIENCE_MS = 12_000;

/** Makes a PDF of a pair's sheet, the active pair's unless an id is given. */
export async function printSheet(name: string, id?: string): Promise<void> {
  const wanted = id ?? activePair.value?.id;
  const entry = project.value.rack.find(each => each.id === wanted);
  if (!entry) {
    report(t('common.noPair'), 'error');
    return;
  }
  const { hardness, fore } = asked.value;
  const table = tableOf(entry.pair, hardness, fore);
  await new Promise<void>(resolve => {
    let stop = () => {};
    const done = () => {
      clearTimeout(timer);
      queueMicrotask(() => stop());
      resolve();
    };
    const timer = setTimeout(done, PATIENCE_MS);
    stop = effect(() => {
      const { table: made, failure, missing } = table.value;
      if (made || failure || missing) done();
    });
  });
  await printPaper(t('print.sheetOf', { name }), `${fileStem(name)}.pdf`, () => <PairSheet id={entry.id} />);
}
