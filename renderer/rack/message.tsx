import type { JSX } from 'preact';

export function Message({ text, id }: { text: string | undefined; id?: string }): JSX.Element | null {
  if (!text) return null;
  return (
    <p class="problem" id={id} role="alert">
      {text}
    </p>
  );
}
