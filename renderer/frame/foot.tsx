import type { JSX } from 'preact';
import { CAUTION } from '../help/cautions.ts';
import { aboutOpen } from '../help/index.tsx';
import { status, tasks, view } from '../state/index.ts';

/** What is happening at the left, the caution that belongs to the question at the right. */
export function Foot(): JSX.Element {
  const said = status.value;
  return (
    <footer class="foot">
      <div class="foot-status" role="status">
        {tasks.value.map(task => (
          <span class="task" key={task.label}>
            <span class="task-label">{task.label}</span>
            <progress value={task.progress ?? undefined} max={1} aria-label={task.label} />
            <button type="button" class="quiet" onClick={() => task.cancel()}>
              Stop
            </button>
          </span>
        ))}
        {said && (
          <span class={said.kind === 'error' ? 'said error' : 'said'}>
            {said.kind === 'error' && <strong>! </strong>}
            {said.text}
            <button
              type="button"
              class="bare dismiss"
              aria-label="Clear this message"
              onClick={() => {
                status.value = null;
              }}
            >
              ✕
            </button>
          </span>
        )}
      </div>
      <p class="caution">
        {CAUTION[view.value.question]}{' '}
        <button
          type="button"
          class="bare link"
          onClick={() => {
            aboutOpen.value = true;
          }}
        >
          About the model
        </button>
      </p>
    </footer>
  );
}
