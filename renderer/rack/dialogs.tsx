import type { JSX } from 'preact';
import { PairFormHost } from './pair-form-host.tsx';
import { RackQuestion } from './rack-question.tsx';
import { RecentList } from './recent-list.tsx';
import { SetAsideList } from './unreadable-work.tsx';

/** What the rack may lay over the page. The frame holds one. */
export function RackDialogs(): JSX.Element {
  return (
    <>
      <PairFormHost />
      <RecentList />
      <RackQuestion />
      <SetAsideList />
    </>
  );
}
