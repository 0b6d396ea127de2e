import type { JSX } from 'preact';
import { sizeOf } from '../../../core/units/index.ts';
import { type Compared, comparedOf, differences, TAKEN_AS } from '../../answers/index.ts';
import { ConditionSliders } from '../../controls/index.ts';
import { PairBadge, Quantity } from '../../kit/index.ts';
import {
  activePair,
  type ChosenPair,
  changeView,
  chosenPairs,
  conditions,
  t,
  view,
} from '../../state/index.ts';
import { turnAsked } from './turn-asked.ts';

/** Differences that matter, the active pair against each of the others. */
export function CompareReadings(): JSX.Element {
  const pairs = chosenPairs.value;
  const active = activePair.value;
  return (
    <>
      <div class="compare-controls">
        <Quantity
          label={t('compare.radiusTurn')}
          measure="radius"
          value={turnAsked.value}
          min={4}
          max={60}
          step={0.5}
          log
          onInput={value => {
            turnAsked.value = value;
          }}
        />
        <ConditionSliders />
      </div>
      {active && pairs.length > 1 && <AllDifferences active={active} pairs={pairs} />}
      <button type="button" onClick={() => changeView({ page: null })}>
        {t(`compare.backTo.${view.value.question}`)}
      </button>
    </>
  );
}

function AllDifferences(props: { active: ChosenPair; pairs: readonly ChosenPair[] }): JSX.Element {
  const { active, pairs } = props;
  const known = new Map<string, Compared>(pairs.map(pair => [pair.id, comparedOf(pair, turnAsked.value)]));
  const others = pairs.filter(pair => pair.id !== active.id);
  return (
    <>
      <h2 class="differences-title">{t('compare.differences')}</h2>
      {others.map(other => (
        <AgainstOne
          key={other.id}
          one={active}
          other={other}
          compared={[known.get(active.id)!, known.get(other.id)!]}
        />
      ))}
      <p class="reading-hint">
        {t('compare.withinUncertainty', {
          stiffness: TAKEN_AS.stiffness * 100,
          mass: TAKEN_AS.massKg / sizeOf('g'),
          angle: TAKEN_AS.angleDeg,
        })}
      </p>
    </>
  );
}

/** A value stays on one line with its uncertainty. */
const unbroken = (text: string): string => text.replaceAll(' ± ', '\u00a0±\u00a0');

function AgainstOne(props: {
  one: ChosenPair;
  other: ChosenPair;
  compared: readonly [Compared, Compared];
}): JSX.Element {
  const { one, other, compared } = props;
  const reported = differences(compared[0], compared[1], {
    system: view.value.system,
    edgeDeg: conditions.value.edgeDeg,
    turnRadius: turnAsked.value,
  });
  const matter = reported.filter(each => each.kind === 'matters');
  const rest = reported.filter(each => each.kind !== 'matters');
  return (
    <section class="against">
      <h3>
        <span class="whole">
          <PairBadge mark={one.mark} /> {one.name}
        </span>{' '}
        {t('compare.against')}{' '}
        <span class="whole">
          <PairBadge mark={other.mark} /> {other.name}
        </span>
      </h3>
      {matter.length === 0 && <p>{t('compare.noneMeasured')}</p>}
      <ul class="matters">
        {matter.map(each => (
          <li key={each.topic}>{unbroken(each.text)}</li>
        ))}
      </ul>
      {rest.length > 0 && (
        <details open={matter.length === 0}>
          <summary>{t('compare.sameOrUnknown', { count: rest.length })}</summary>
          <ul>
            {rest.map(each => (
              <li key={each.topic}>{unbroken(each.text)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
