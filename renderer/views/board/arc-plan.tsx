import './arc-plan.css';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { formatQuantity } from '../../../core/units/index.ts';
import { boardAnswers, type Place } from '../../answers/index.ts';
import { t, view } from '../../state/index.ts';
import { pointAlong, startOf } from './arc-math.ts';
import { guessed, guessPhase, NEUTRAL_RADIUS, revealed } from './guess.ts';
import { guessName, layoutRadius } from './guessing.ts';

const STEPS = 48;

interface Drawn {
  readonly radius: number;
  readonly colour: string;
  readonly dash: string | undefined;
  readonly label: string;
}

/**
 * Arcs from above to scale on a grid of metres, the fall line downwards, so that the skier's right is at the left.
 * For paper, and where no scene is.
 */
export function ArcPlan(props: {
  /** Told of a point of the snow that was clicked, m. */
  readonly onPoint?: (x: number, y: number) => void;
  /** On paper the boardAnswers are always drawn. */
  readonly always?: boolean;
}): JSX.Element | null {
  const svg = useRef<SVGSVGElement>(null);
  const shown = boardAnswers.value;
  if (shown.length === 0) return null;
  const guess = guessed.value;
  const { system } = view.value;
  const metres = (value: number) => formatQuantity(value, 'radius', { system }).text;
  const { heading, length } = startOf(props.always ? shown[0]!.path : layoutRadius());
  const arcs: Drawn[] = shown
    .filter((_, i) => props.always || revealed(i as Place))
    .flatMap(({ ski: one, moment, path, slides }) => [
      {
        radius: path,
        colour: one.mark.colour,
        dash: one.mark.dash,
        label: t(slides ? 'board.arcSlides' : 'board.arc', { letter: one.mark.letter, radius: metres(path) }),
      },
      ...(slides
        ? [
            {
              radius: moment.radius,
              colour: one.mark.colour,
              dash: '1 2',
              label: t('board.ownArc', { letter: one.mark.letter, radius: metres(moment.radius) }),
            },
          ]
        : []),
    ]);
  if (guess !== null && guessPhase.value !== 'off') {
    arcs.push({
      radius: guess,
      colour: 'var(--accent)',
      dash: '2 3',
      label: `${guessName()} ${metres(guess)}`,
    });
  }
  const box = boundsOf(arcs.length > 0 ? arcs.map(arc => arc.radius) : [NEUTRAL_RADIUS], heading, length);
  const grid = metreGrid(box);
  const unit = Math.max(box.right - box.left, box.bottom - box.top);
  const click = (event: MouseEvent) => {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix || !props.onPoint) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    props.onPoint(-at.x, at.y);
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the guess slider beside it does the same by keyboard
    <svg
      ref={svg}
      class="arc-plan"
      viewBox={`${box.left} ${box.top} ${box.right - box.left} ${box.bottom - box.top}`}
      role="img"
      aria-label={t('board.arcsFromAbove')}
      onClick={click}
    >
      <path class="metre-grid" d={grid} />
      {arcs.map(arc => {
        const end = drawnAt(arc.radius, heading, length);
        return (
          <g key={arc.label}>
            <path
              class="plan-arc"
              d={arcPath(arc.radius, heading, length)}
              stroke={arc.colour}
              stroke-dasharray={arc.dash}
            />
            <text
              x={end.x + unit * 0.015}
              y={end.y + unit * 0.05}
              font-size={unit * 0.035}
              fill={arc.colour}
              text-anchor="end"
            >
              {arc.label}
            </text>
          </g>
        );
      })}
      <circle r={unit * 0.01} />
      <text x={box.left + unit * 0.01} y={box.top + unit * 0.035} font-size={unit * 0.03}>
        {t('board.oneSquare')}
      </text>
    </svg>
  );
}

/** Where a point of an arc is on the drawing. */
function drawnAt(radius: number, heading: number, along: number): { x: number; y: number } {
  const { x, y } = pointAlong(radius, heading, along);
  return { x: -x, y };
}

function boundsOf(radii: readonly number[], heading: number, length: number) {
  let left = 0;
  let right = 0;
  let top = 0;
  let bottom = 0;
  for (const radius of radii) {
    for (let i = 0; i <= STEPS; i++) {
      const { x, y } = drawnAt(radius, heading, (length * i) / STEPS);
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  const room = 0.22 * Math.max(right - left, bottom - top);
  return {
    left: Math.floor(left - room),
    right: Math.ceil(right + room / 4),
    top: Math.floor(top - room / 4),
    bottom: Math.ceil(bottom + room / 2),
  };
}

function metreGrid(box: ReturnType<typeof boundsOf>): string {
  let path = '';
  for (let x = box.left; x <= box.right; x++) path += `M${x},${box.top}V${box.bottom}`;
  for (let y = box.top; y <= box.bottom; y++) path += `M${box.left},${y}H${box.right}`;
  return path;
}

function arcPath(radius: number, heading: number, length: number): string {
  let path = 'M0,0';
  for (let i = 1; i <= STEPS; i++) {
    const { x, y } = drawnAt(radius, heading, (length * i) / STEPS);
    path += `L${x.toFixed(3)},${y.toFixed(3)}`;
  }
  return path;
}
