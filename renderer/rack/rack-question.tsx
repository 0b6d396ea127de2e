import type { JSX } from 'preact';
import { answer, waitingRacks } from '../files/index.ts';
import { Dialog } from '../kit/index.ts';
import { project, rackFileUnsaved, t } from '../state/index.ts';

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
      title={t('rack.open', { name: file.name })}
      onClose={() => {
        // Closed without an answer; an answer has taken it off the list already.
        if (waitingRacks.value[0] === waiting) void answer('leave');
      }}
      footer={
        <>
          {!rackFile.readOnly && !changedOutside && (
            <button type="button" onClick={() => void answer('join')}>
              {t('rack.addPairsTo', { name: rackFile.name })}
            </button>
          )}
          <button type="button" class={unsaved ? '' : 'primary'} onClick={() => void answer('replace')}>
            {t(changedOutside ? 'rack.readAgain' : unsaved ? 'rack.openWithoutSaving' : 'rack.openInPlace')}
          </button>
          {unsaved && !changedOutside && (
            <button type="button" class="primary" onClick={() => void answer('save')}>
              {t('rack.saveThenOpen', { name: rackFile.name })}
            </button>
          )}
        </>
      }
    >
      <div class="rack-question">
        {changedOutside ? (
          <p>
            {t('rack.changedOutside', { name: rackFile.name })}{' '}
            {t(unsaved ? 'rack.readAgainLoses' : 'rack.readAgainReplaces')}
          </p>
        ) : (
          <p>
            {t(unsaved ? 'rack.oneAtATimeUnsaved' : 'rack.oneAtATime', {
              name: rackFile.name,
              pairs: t('common.pairs', { count: pairs }),
            })}
          </p>
        )}
        <p class="soft">
          {t(changedOutside || rackFile.readOnly ? 'rack.pairsLeave' : 'rack.pairsLeaveUnlessAdded', {
            name: rackFile.name,
          })}
        </p>
      </div>
    </Dialog>
  );
}
