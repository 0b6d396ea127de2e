import type { JSX } from 'preact';
import { answer, waitingRacks } from '../files/index.ts';
import { Dialog } from '../kit/index.ts';
import { project, rackFileUnsaved } from '../state/index.ts';

/** Asks what to do with the rack that is open before another one is opened. */
export function RackQuestion(): JSX.Element | null {
  const [waiting] = waitingRacks.value;
  const { rackFile, rack } = project.value;
  if (!waiting || !rackFile) return null;
  const { file } = waiting;
  const unsaved = rackFileUnsaved.value;
  const pairs = rack.filter(entry => entry.inRackFile).length;
  const changedOutside = rackFile.token === file.token;
  return (
    <Dialog
      key={file.token}
      title={`Open ${file.name}`}
      onClose={() => {
        // Closed without an answer; an answer has taken it off the list already.
        if (waitingRacks.value[0] === waiting) void answer('leave');
      }}
      footer={
        <>
          {!rackFile.readOnly && !changedOutside && (
            <button type="button" onClick={() => void answer('join')}>
              Add its pairs to {rackFile.name}
            </button>
          )}
          <button type="button" class={unsaved ? '' : 'primary'} onClick={() => void answer('replace')}>
            {changedOutside ? 'Read it again' : unsaved ? 'Open without saving' : 'Open in its place'}
          </button>
          {unsaved && !changedOutside && (
            <button type="button" class="primary" onClick={() => void answer('save')}>
              Save {rackFile.name}, then open
            </button>
          )}
        </>
      }
    >
      <div class="rack-question">
        {changedOutside ? (
          <p>
            {rackFile.name} is open already, and the file was changed by something else since.{' '}
            {unsaved
              ? 'Your changes here are not saved. Reading it again puts what is in the file in their place.'
              : 'Reading it again puts what is in the file now in place of what stands here.'}
          </p>
        ) : (
          <p>
            One rack file is open at a time, so that saving never mixes two. {rackFile.name} is open with{' '}
            {pairs === 1 ? '1 pair' : `${pairs} pairs`}
            {unsaved ? ' and has changes that are not saved.' : ', all of it saved.'}
          </p>
        )}
        <p class="soft">
          {changedOutside || rackFile.readOnly ? 'The' : 'Unless the new ones are added to them, the'} pairs
          of {rackFile.name} leave the list; undo brings them back. Pairs that are not in it stay.
        </p>
      </div>
    </Dialog>
  );
}
