import './frame.css';
import './narrow.css';
import type { JSX } from 'preact';
import { AboutModel, aboutOpen, HelpPanel, helpOpen } from '../help/index.ts';
import { WorkingPanel } from '../kit/index.ts';
import { Paper } from '../print/index.ts';
import { RackDialogs, RackPanel } from '../rack/index.ts';
import { t, view } from '../state/index.ts';
import { board, pages, views } from '../views/index.ts';
import { useFocusFollows } from './focus-follows.ts';
import { Foot } from './foot.tsx';
import { actionKeys } from './key-groups.ts';
import { Rail } from './rail.tsx';
import { ThreadNotice } from './thread-notice.tsx';
import { TopBar } from './top-bar.tsx';

/** Rail, rack, stage and readings, with a bar over them and a status line under them. */
export function Frame(): JSX.Element {
  const { question, page } = view.value;
  const laidOver = page === null ? undefined : pages[page];
  const current = laidOver ?? views.find(each => each.question === question) ?? views[0]!;
  const Board = board;
  useFocusFollows(view.value.board ? 'board' : (page ?? 'questions'));
  const panels = (
    <>
      <WorkingPanel />
      <ThreadNotice />
      <RackDialogs />
      {helpOpen.value && <HelpPanel actions={actionKeys} />}
      {aboutOpen.value && <AboutModel />}
    </>
  );
  if (view.value.board && Board) {
    return (
      <>
        <Board />
        {panels}
      </>
    );
  }
  return (
    <div class={page === 'squad' ? 'frame wide' : 'frame'}>
      <TopBar />
      <Rail current={laidOver ? null : current.id} />
      {page !== 'squad' && <RackPanel />}
      <main class="stage" id="stage" tabIndex={-1}>
        <h1>{t(current.heading)}</h1>
        <current.Stage key={current.id} />
      </main>
      <aside class="readings" id="readings" aria-label={t('frame.readings')} tabIndex={-1}>
        <current.Readings key={current.id} />
      </aside>
      <Foot />
      {panels}
      <Paper />
    </div>
  );
}
