import type { JSX } from 'preact';
import type { PairMark } from '../state/index.ts';

/** The pair's letter on its colour, with its dash pattern under it. `svg` draws it inside a drawing. */
export function PairBadge({ mark, svg = false }: { mark: PairMark; svg?: boolean }): JSX.Element {
  if (svg) {
    return (
      <g>
        <circle cx={8} r={8} fill={mark.colour} />
        <text
          x={8}
          text-anchor="middle"
          dominant-baseline="central"
          font-size="11"
          font-weight="700"
          fill="var(--on-pair)"
        >
          {mark.letter}
        </text>
      </g>
    );
  }
  return (
    <span class="pair-badge" style={{ '--pair': mark.colour }}>
      <span class="pair-letter">{mark.letter}</span>
      <svg width="22" height="4" aria-hidden="true">
        <line
          x1="0"
          x2="22"
          y1="2"
          y2="2"
          stroke={mark.colour}
          stroke-width="2.5"
          stroke-dasharray={mark.dash}
        />
      </svg>
    </span>
  );
}
