import './chain.css';
import type { JSX } from 'preact';
import { GRAVITY } from '../../../core/run/index.ts';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import { type BoardAnswer, boardAnswers, type Place } from '../../answers/index.ts';
import { PresetChoice } from '../../controls/index.ts';
import { PairBadge, showWorking } from '../../kit/index.ts';
import { view } from '../../state/index.ts';
import { revealed } from './guess.ts';

interface Link {
  readonly key: string;
  readonly label: string;
  readonly measure: MeasureName;
  readonly decimals?: number;
  value(answer: BoardAnswer): number;
}

const LINKS: readonly Link[] = [
  { key: 'run.radius', label: 'Turn radius', measure: 'radius', value: a => a.moment.radius },
  {
    key: 'run.sidewaysForce',
    label: 'Sideways push (× body weight)',
    measure: 'number',
    value: a => a.moment.sideways / (a.question.mass * GRAVITY),
  },
  { key: 'run.lean', label: 'Lean to balance', measure: 'angle', decimals: 0, value: a => a.moment.lean },
  { key: 'run.hold', label: 'Grip to spare', measure: 'angle', decimals: 0, value: a => a.moment.hold },
];

/** Edge angle to grip, one link under another; each number explains itself. */
export function Chain(): JSX.Element {
  const shown = boardAnswers.value;
  return (
    <section class="board-chain" data-skis={shown.length} aria-label="From edge angle to grip">
      <PresetChoice />
      <div class="chain-heads">
        {shown.map(({ ski: one, model, source }) => (
          <span key={one.id} class="chain-head">
            <PairBadge mark={one.mark} /> {one.name}
            <span class="chain-model" title={`${one.name} ${source}`}>
              {model}
            </span>
          </span>
        ))}
      </div>
      <ol>
        {LINKS.map(link => (
          <li key={link.key}>
            <span class="link-label">{link.label}</span>
            <span class="link-values">
              {shown.map((answer, i) => (
                <LinkValue key={answer.ski.id} link={link} answer={answer} hidden={!revealed(i as Place)} />
              ))}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function LinkValue(props: { link: Link; answer: BoardAnswer; hidden: boolean }): JSX.Element {
  const { link, answer, hidden } = props;
  const { name, mark } = answer.ski;
  if (hidden) {
    return (
      <span class="link-value">
        <span aria-hidden="true">?</span>
        <span class="sr-only">hidden until the guess</span>
      </span>
    );
  }
  const { text, value, unit } = formatQuantity(link.value(answer), link.measure, {
    system: view.value.system,
    decimals: link.decimals,
  });
  const slides = link.key === 'run.hold' && answer.slides;
  return (
    <button
      type="button"
      class={slides ? 'bare link-value slides' : 'bare link-value'}
      style={{ color: mark.colour }}
      aria-label={`${link.label}, ${name}: ${text}${slides ? ', slides' : ''}. How?`}
      onClick={() => {
        const workings = answer.chain();
        const upTo = workings.findIndex(each => each.key === link.key);
        showWorking(`${link.label}: ${name}`, workings.slice(0, upTo + 1).reverse());
      }}
    >
      {value}
      {unit === '°' ? '°' : unit && <small> {unit}</small>}
      {slides && <em>slides</em>}
    </button>
  );
}
