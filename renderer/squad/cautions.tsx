import type { JSX } from 'preact';

export const SQUAD_CAUTIONS: readonly string[] = [
  'Edges are sharp: handle skis edge to edge and wear gloves at the vice.',
  'Hot wax fumes and burns: ventilate the room, keep the iron below smoking, never leave it on.',
];

export function SquadCautions(): JSX.Element {
  return (
    <ul class="squad-cautions" aria-label="Cautions">
      {SQUAD_CAUTIONS.map(text => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
