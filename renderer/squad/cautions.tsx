import type { JSX } from 'preact';
import { SQUAD_CAUTIONS } from '../help/index.ts';

export function SquadCautions(): JSX.Element {
  return (
    <ul class="squad-cautions" aria-label="Cautions">
      {SQUAD_CAUTIONS.map(text => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
