import './verdicts.css';
import type { JSX } from 'preact';
import { boardAnswers, type Place } from '../../answers/index.ts';
import { inWords } from '../../state/index.ts';
import { guessPhase, revealed } from './guess.ts';
import { verdictOf } from './verdict.ts';

/** Under the picture: does it carve, where does grip end, and what to do. */
export function Verdicts(): JSX.Element | null {
  if (guessPhase.value === 'asking') return null;
  const shown = boardAnswers.value.filter((_, i) => revealed(i as Place));
  return (
    <div class="board-verdicts" role="status">
      {shown.map(answer => (
        <p key={answer.ski.id} class={answer.slides ? 'slides' : undefined}>
          <b style={{ color: answer.ski.mark.colour }}>{answer.ski.mark.letter}</b>{' '}
          {inWords(verdictOf(answer))}
        </p>
      ))}
    </div>
  );
}
