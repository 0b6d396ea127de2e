import './big-slider.css';
import type { JSX } from 'preact';
import { settle } from '../../state/index.ts';

/** A slider to be seen across a room: its label, the value large, a thumb for an unsteady pointer. */
export function BigSlider(props: {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** The value as the room reads it. */
  readonly text: string;
  readonly letter?: string;
  readonly colour?: string;
  onInput(value: number): void;
}): JSX.Element {
  const { min, max, value } = props;
  const filled = max > min ? (100 * (value - min)) / (max - min) : 0;
  return (
    <label class="big-slider" style={props.colour ? { '--accent': props.colour } : undefined}>
      <span class="big-label">
        {props.letter && <b>{props.letter} </b>}
        {props.label}
      </span>
      <output class="big-value">{props.text}</output>
      <input
        type="range"
        min={min}
        max={max}
        step={props.step}
        value={value}
        aria-label={props.letter ? `${props.label} ${props.letter}` : props.label}
        aria-valuetext={props.text}
        style={{ '--filled': `${filled}%` }}
        onInput={event => props.onInput(Number(event.currentTarget.value))}
        onChange={settle}
      />
    </label>
  );
}
