import type { ComponentChildren, JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { aboutOpen, CAUTION } from '../help/index.ts';
import { status, t, tasks, view } from '../state/index.ts';

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
            <PassingButton class="quiet" onClick={() => task.cancel()}>
              {t('frame.stop')}
            </PassingButton>
          </span>
        ))}
        {said && (
          <span class={said.kind === 'error' ? 'said error' : 'said'}>
            {said.kind === 'error' && <strong>! </strong>}
            {said.text}
            <PassingButton
              class="bare dismiss"
              label={t('frame.clearMessage')}
              onClick={() => {
                status.value = null;
              }}
            >
              ✕
            </PassingButton>
          </span>
        )}
      </div>
      <p class="caution">
        {t(CAUTION[view.value.question])}{' '}
        <button
          type="button"
          class="bare link"
          onClick={() => {
            aboutOpen.value = true;
          }}
        >
          {t('help.aboutModel')}
        </button>
      </p>
    </footer>
  );
}

/** A button that may go while it has the focus: it hands it to the one that stays, so that the keyboard keeps its place. */
function PassingButton(props: {
  readonly class: string;
  readonly label?: string;
  readonly children: ComponentChildren;
  onClick(): void;
}): JSX.Element {
  const button = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    const going = button.current;
    return () => {
      if (going !== document.activeElement) return;
      going?.closest('.foot')?.querySelector<HTMLElement>('.caution button')?.focus();
    };
  }, []);
  return (
    <button ref={button} type="button" class={props.class} aria-label={props.label} onClick={props.onClick}>
      {props.children}
    </button>
  );
}
