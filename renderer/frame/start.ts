import { effect } from '@preact/signals';
import { type Sentence, say } from '../../core/language/index.ts';
import { demoSets } from '../demo/index.ts';
import { takeIn } from '../files/index.ts';
import type { Host } from '../host/index.ts';
import { demoEntries } from '../rack/index.ts';
import {
  chooseOnly,
  course,
  courseUnsaved,
  draftAside,
  EMPTY_PROJECT,
  keepDraft,
  load,
  type Project,
  project,
  projectFrom,
  rackFileUnsaved,
  report,
  settingsNotTaken,
  tuneLogUnsaved,
  unsavedEntries,
} from '../state/index.ts';
import { onCommand, saveEverything } from './commands.ts';
import { onFrameKey } from './keys.ts';

/** Brings back the work in progress, or the demo rack on the first start, and connects the host. */
export async function startApp(host: Host): Promise<void> {
  const { first, draftUnread, notTaken } = await firstProject(host);
  load(first);
  // What could not be read is not written over: it may be whole, and readable at the next start.
  if (!draftUnread) keepDraft(host.draft, message => report(message, 'error'));
  const [aside, ...more] = first.setAside;
  if (aside) {
    const others = more.length > 0 ? ` and ${more.length} more` : '';
    report(`${aside.name}${others} could not be taken up again and is kept: see the rack.`, 'error');
  }
  if (notTaken.length > 0) {
    report(
      say({ key: 'setting.notTakenUp', values: { settings: notTaken } }, { units: first.view.system }),
      'error',
    );
  }
  effect(() => {
    const names = unsavedEntries.value.map(entry => entry.pair.name);
    const { rackFile } = project.value;
    if (rackFile && rackFileUnsaved.value) names.push(rackFile.name);
    if (tuneLogUnsaved.value) names.push('The tune log, which a rack file holds');
    if (courseUnsaved.value) names.push(course.value.name || 'The set of gates');
    // A browser lets go of the drafts of closed windows that hold nothing unsaved.
    if (host.kind === 'browser') names.push(...project.value.setAside.map(({ name }) => name));
    host.setUnsaved(names.slice(0, 1000).map(name => name.slice(0, 200)));
  });
  host.onCommand(onCommand);
  host.onClosing(saveEverything);
  host.onArrival(arrival => {
    if (arrival.ok) takeIn(arrival.file);
    else report(arrival.message, 'error');
  });
  window.addEventListener('keydown', onFrameKey);
}

interface First {
  readonly first: Project;
  readonly draftUnread: boolean;
  /** Settings of the draft that fail their check, by name. */
  readonly notTaken: readonly Sentence[];
}

async function firstProject(host: Host): Promise<First> {
  let draft: string | null = null;
  let draftUnread = false;
  try {
    draft = await host.draft.read();
  } catch (error) {
    draftUnread = true;
    report(
      `Work in progress could not be read and is left as it is: ${(error as Error).message} ` +
        'Until the next start, only what you save to a file is kept.',
      'error',
    );
  }
  const kept = projectFrom(draft);
  if (kept) return { first: kept, draftUnread, notTaken: settingsNotTaken(draft, kept) };
  const rack = demoEntries();
  const first = chooseOnly(rack.slice(0, 1).map(entry => entry.id))({
    ...EMPTY_PROJECT,
    rack,
    course: demoSets.SL,
    setAside: draftAside(draft),
  });
  return { first, draftUnread, notTaken: [] };
}
