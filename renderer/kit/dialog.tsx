import type { ComponentChildren, JSX } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { t } from '../state/index.ts';

export interface DialogProps {
  readonly title: string;
  /** `drawer` stands at the right edge over the readings; `middle` in the middle of the window. */
  readonly place?: 'middle' | 'drawer';
  readonly footer?: ComponentChildren;
  readonly children: ComponentChildren;
  onClose(): void;
}

/** A modal window: Escape, its close button or a click beside it close it; focus returns where it was. */
export function Dialog({ title, place = 'middle', footer, children, onClose }: DialogProps): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  // Before the next key is read, so that nothing typed after opening goes astray.
  useLayoutEffect(() => {
    const shown = dialog.current;
    const opener = document.activeElement as HTMLElement | null;
    shown?.showModal();
    return () => {
      // Closing gave the focus back already; by now it may have gone on to another control.
      const at = document.activeElement;
      if (at === null || at === document.body || shown?.contains(at)) opener?.focus?.();
    };
  }, []);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes the dialog; the click beside it is extra
    <dialog
      ref={dialog}
      class={`dialog ${place}`}
      aria-labelledby={id}
      onClose={onClose}
      onClick={event => {
        if (event.target === dialog.current) dialog.current?.close();
      }}
    >
      <div class="dialog-sheet">
        <header>
          <h2 id={id}>{title}</h2>
          <button type="button" class="quiet" onClick={() => dialog.current?.close()}>
            {t('common.close')}
          </button>
        </header>
        {/* Focusable so that arrow keys scroll long content. */}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
        <section class="dialog-body" tabIndex={0} aria-label={title}>
          {children}
        </section>
        {footer && <footer>{footer}</footer>}
      </div>
    </dialog>
  );
}
