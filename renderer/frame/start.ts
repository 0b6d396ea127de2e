import { effect } from '@preact/signals';
import { demoSets } from '../demo/sets/index.ts';
import type { Host } from '../host/index.ts';
import { demoEntries } from '../rack/demo-rack.ts';
import {
  chooseOnly,
  course,
  courseUnsaved,
  EMPTY_PROJECT,
  keepDraft,
  load,
  project,
  projectFrom,
  rackFileUnsaved,
  report,
  tuneLogUnsaved,
  unsavedEntries,
} from '../state/index.ts';
import { takeArrival } from './arrival.ts';
import { onCommand, saveEverything } from './commands.ts';
import { onFrameKey } from './keys.ts';

/** Brings back the work in progress, or the demo rack on the first start, and connects the host. */
export async function startApp(host: Host): Promise<void> {
  load(await firstProject(host));
  keepDraft(host.draft, message => report(message, 'error'));
  effect(() => {
    const names = unsavedEntries.value.map(entry => entry.pair.name);
    const { rackFile } = project.value;
    if (rackFile && rackFileUnsaved.value) names.push(rackFile.name);
    if (tuneLogUnsaved.value) names.push('The tune log, which a rack file holds');
    if (courseUnsaved.value) names.push(course.value.name || 'The set of gates');
    host.setUnsaved(names.slice(0, 1000).map(name => name.slice(0, 200)));
  });
  host.onCommand(onCommand);
  host.onClosing(saveEverything);
  host.onArrival(arrival => {
    if (arrival.ok) takeArrival(arrival.file);
    else report(arrival.message, 'error');
  });
  window.addEventListener('keydown', onFrameKey);
}

async function firstProject(host: Host) {
  let draft: string | null = null;
  try {
    draft = await host.draft.read();
  } catch (error) {
    report(`Work in progress could not be read: ${(error as Error).message}`, 'error');
  }
  const kept = projectFrom(draft);
  if (kept) return kept;
  const rack = demoEntries();
  return chooseOnly(rack.slice(0, 1).map(entry => entry.id))({
    ...EMPTY_PROJECT,
    rack,
    course: demoSets.SL,
  });
}
