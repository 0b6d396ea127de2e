import type { PlainKey } from '../../../core/language/index.ts';
import './chain.css';
import type { JSX } from 'preact';
import { GRAVITY } from '../../../core/run/index.ts';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import { type BoardAnswer, boardAnswers, type Place } from '../../answers/index.ts';
import { PresetChoice } from '../../controls/index.ts';
import { PairBadge, showWorking } from '../../kit/index.ts';
import { t, view } from '../../state/index.ts';
import { revealed } from './guess.ts';

interface Link {
  readonly key: string;
  readonly label: PlainKey;
  readonly measure: MeasureName;
  readonly decimals?: number;
  value(answer: BoardAnswer): number;
}

const LINKS: readonly Link[] = [
  { key: 'run.radius', label: 'board.turnRadius', measure: 'radius', value: a => a.moment.radius },
  {
    key: 'run.sidewaysForce',
    label: 'board.sidewaysPush',
    measure: 'number',
    value: a => a.moment.sideways / (a.question.mass * GRAVITY),
  },
  { key: 'run.lean', label: 'board.lean', measure: 'angle', decimals: 0, value: a => a.moment.lean },
  { key: 'run.hold', label: 'board.grip', measure: 'angle', decimals: 0, value: a => a.moment.hold },
];

/** Edge angle to grip, one link under another; each number explains itself. */
export function Chain(): JSX.Element {
  const shown = boardAnswers.value;
  return (
    <section class="board-chain" data-skis={shown.length} aria-label={t('board.chain')}>
      <PresetChoice />
      <div class="chain-heads">
        {shown.map(({ ski: one, model, source }) => (
          <span key={one.id} class="chain-head">
            <PairBadge mark={one.mark} /> {one.name}
            <span class="chain-model" title={t('common.says', { name: one.name, what: source })}>
              {t(model)}
            </span>
          </span>
        ))}
      </div>
      <ol>
        {LINKS.map(link => (
          <li key={link.key}>
            <span class="link-label">{t(link.label)}</span>
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
        <span class="sr-only">{t('board.hidden')}</span>
      </span>
    );
  }
  const { text, value, unit } = formatQuantity(link.value(answer), link.measure, {
    system: view.value.system,
    decimals: link.decimals,
  });
  const label = t(link.label);
  const slides = link.key === 'run.hold' && answer.slides;
  return (
    <button
      type="button"
      class={slides ? 'bare link-value slides' : 'bare link-value'}
      style={{ color: mark.colour }}
      aria-label={t(slides ? 'board.howSlides' : 'board.how', { label, name, text })}
      onClick={() => {
        const workings = answer.chain();
        const upTo = workings.findIndex(each => each.key === link.key);
        showWorking(t('board.workingOf', { label, name }), workings.slice(0, upTo + 1).reverse());
      }}
    >
      {value}
      {unit === '°' ? '°' : unit && <small> {unit}</small>}
      {slides && <em>{t('board.slides')}</em>}
    </button>
  );
}
