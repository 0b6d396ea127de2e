import { effect } from '@preact/signals';
import type { Sentence } from '../../core/language/index.ts';
import { demoSets } from '../demo/index.ts';
import { importFile } from '../files/index.ts';
import type { DraftRecords, Host } from '../host/index.ts';
import { demoEntries } from '../rack/index.ts';
import {
  chooseOnly,
  course,
  courseUnsaved,
  EMPTY_PROJECT,
  errorWords,
  keepDraft,
  load,
  type Project,
  project,
  projectFromRecords,
  rackFileUnsaved,
  report,
  status,
  t,
  tuneLogUnsaved,
  unsavedEntries,
} from '../state/index.ts';
import { perform, saveEverything } from './actions.ts';
import { onFrameKey } from './keys.ts';

/** Brings back the work in progress, or the demo rack on the first start, and connects the host. */
export async function startApp(host: Host): Promise<void> {
  const { first, kept, stale, draftUnread, notTaken } = await firstProject(host);
  load(first);
  // What could not be read is not written over: it may be whole, and readable at the next start.
  if (!draftUnread) {
    const keeper = keepDraft(host.draft, kept, stale, tellTrouble);
    host.onEnding(keeper.flush);
  }
  const [unreadable, ...more] = first.unreadable;
  if (unreadable) {
    const { name } = unreadable;
    const reported =
      more.length > 0
        ? t('frame.notRestoredMore', { name, more: more.length })
        : t('frame.notRestored', { name });
    report(reported, 'error');
  }
  if (notTaken.length > 0) {
    report(t('setting.notTakenUp', { settings: notTaken }), 'error');
  }
  effect(() => {
    const names = unsavedEntries.value.map(entry => entry.pair.name);
    const { rackFile } = project.value;
    if (rackFile && rackFileUnsaved.value) names.push(rackFile.name);
    if (tuneLogUnsaved.value) names.push(t('frame.unsavedTuneLog'));
    if (courseUnsaved.value) names.push(course.value.name || t('frame.unsavedSet'));
    // A browser lets go of the drafts of closed windows that hold nothing unsaved.
    if (host.kind === 'browser') names.push(...project.value.unreadable.map(({ name }) => name));
    host.setUnsaved(names.slice(0, 1000).map(name => name.slice(0, 200)));
  });
  host.onCommand(perform);
  host.onClosing(saveEverything);
  host.onArrival(arrival => {
    if (arrival.ok) importFile(arrival.file);
    else report(arrival.message, 'error');
  });
  window.addEventListener('keydown', onFrameKey);
}

/** Writes of the draft fail, or work again: then the message of the failure goes. */
function tellTrouble(why: string | null): void {
  if (why === null) {
    if (status.peek()?.about === 'draft') status.value = null;
    return;
  }
  report(t('frame.draftNotKept', { why }), 'error', 'draft');
}

interface First {
  readonly first: Project;
  /** The project that the draft already holds, record by record; null when it holds nothing of it. */
  readonly kept: Project | null;
  /** Keys of what it holds otherwise. */
  readonly stale: readonly string[];
  readonly draftUnread: boolean;
  /** Settings of the draft that fail their check, by name. */
  readonly notTaken: readonly Sentence[];
}

async function firstProject(host: Host): Promise<First> {
  let draft: DraftRecords | null = null;
  let draftUnread = false;
  try {
    draft = await host.draft.read();
  } catch (error) {
    draftUnread = true;
    report(t('frame.draftUnread', { why: errorWords(error) }), 'error');
  }
  const read = projectFromRecords(draft);
  const stale = read.whole ? [] : Object.keys(draft ?? {});
  if (read.project) {
    const { project: first, notTaken } = read;
    return { first, kept: read.whole ? first : null, stale, draftUnread, notTaken };
  }
  const rack = demoEntries();
  const first = chooseOnly(rack.slice(0, 1).map(entry => entry.id))({
    ...EMPTY_PROJECT,
    rack,
    course: demoSets.SL,
    unreadable: read.unreadable,
  });
  return { first, kept: null, stale, draftUnread, notTaken: [] };
}
