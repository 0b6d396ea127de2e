import type { JSX } from 'preact';
import { type Hold, holdAlong, holdWorking } from '../../../core/carve/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { type Balance, balanceIn, grooveOf, LEAST_LOAD, MOST_LOAD, turnOf } from '../../answers/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { Chart, Reading, type Series } from '../../kit/index.ts';
import { type ChosenPair, changeConditions, conditions, ski, t, view } from '../../state/index.ts';
import { station } from './sheet-state.ts';

interface Held {
  readonly pair: ChosenPair;
  readonly hold: Hold;
  readonly balance: Balance;
  readonly x: Float64Array;
}

function heldOf(pair: ChosenPair): Held[] {
  const solved = grooveOf(pair);
  const { radius } = turnOf(pair);
  if (!solved || radius === null) return [];
  const { bootCentre, baseBevel } = ski(pair.pair);
  const balance = balanceIn(radius, solved.conditions.edgeAngle, baseBevel);
  return [{ pair, balance, hold: holdAlong(solved, bootCentre, balance.lean, baseBevel), x: solved.x }];
}

/** Hold along the edge at the present speed: below zero that part of the edge slips. */
export function HoldSheet(props: {
  readonly pairs: readonly ChosenPair[];
  readonly active: ChosenPair;
}): JSX.Element {
  const held = props.pairs.flatMap(heldOf);
  const own = held.find(({ pair }) => pair.id === props.active.id);
  return (
    <>
      <Chart
        title={t('edge.gripAlongEdge')}
        x={{ label: t('common.fromRearContact'), measure: 'station' }}
        y={{ label: t('edge.gripAxis'), measure: 'angle', zero: true }}
        series={held.map(
          ({ pair, hold, x }): Series => ({
            id: pair.id,
            label: pair.name,
            mark: pair.mark,
            x,
            y: hold.along,
          }),
        )}
        cursor={station}
        empty={t('edge.gripEmpty')}
        under={plot => {
          const zero = plot.y(0);
          return (
            <>
              <rect class="slips" y={zero} width={plot.width} height={Math.max(0, plot.height - zero)} />
              <line class="zero-line" x2={plot.width} y1={zero} y2={zero} />
            </>
          );
        }}
      />
      <div class="hold-side">
        <ConditionControl field="speedKmh" label="condition.speed" />
        {own && <OwnHold held={own} />}
      </div>
    </>
  );
}

function OwnHold({ held }: { held: Held }): JSX.Element {
  const { pair, hold, balance } = held;
  const { baseBevel } = ski(pair.pair);
  const solved = grooveOf(pair)!;
  const { system } = view.value;
  const load = Math.round(Math.min(MOST_LOAD, Math.max(LEAST_LOAD, balance.load)) / 10) * 10;
  const away = Math.abs(load - conditions.value.loadN) > 10;
  return (
    <>
      <p class="hold-words">
        {wordsOf(hold)}{' '}
        {t('edge.carriesUpTo', { speed: { quantity: 'speed', value: balance.greatestSpeed, decimals: 0 } })}
      </p>
      <div class="hold-pair">
        <Reading
          label={t('edge.lean')}
          measure="angle"
          size="small"
          value={balance.lean}
          working={() => balance.explain('run.normalForce', 'run.sidewaysForce', 'run.lean')}
        />
        <Reading
          label={t('edge.atBoot')}
          measure="angle"
          size="small"
          value={hold.boot}
          working={() => [
            holdWorking(solved.conditions.edgeAngle, 0, baseBevel, balance.lean),
            ...balance.explain('run.holdingSpeed'),
          ]}
        />
      </div>
      {away && (
        <button
          type="button"
          onClick={() => changeConditions(t('condition.load'), { loadN: load })}
          title={t('edge.balancedLoadHint')}
        >
          {t('edge.balancedLoad', { load: formatQuantity(load, 'force', { system }).text })}
        </button>
      )}
    </>
  );
}

function wordsOf(hold: Hold): string {
  if (hold.skids) return t('edge.grip.skids');
  if (hold.slips) return t('edge.grip.slips', { part: hold.lostFirst });
  if (hold.lostFirst === 'boot') return t('edge.grip.holds');
  return t('edge.grip.letsGoFirst', { part: hold.lostFirst });
}
