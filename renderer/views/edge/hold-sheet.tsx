import type { JSX } from 'preact';
import { type Hold, holdAlong, holdWorking } from '../../../core/carve/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { type Balance, balanceIn, grooveOf, LEAST_LOAD, MOST_LOAD, turnOf } from '../../answers/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { Chart, Reading, type Series } from '../../kit/index.ts';
import { type ChosenPair, changeConditions, conditions, ski, view } from '../../state/index.ts';
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
        title="Hold along the edge"
        x={{ label: 'From rear contact', measure: 'station' }}
        y={{ label: 'Hold (below 0 slips)', measure: 'angle', zero: true }}
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
        empty="A pair with a bending stiffness draws its hold here."
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

const PARTS = { tip: 'the tip', boot: 'the part under the boot', tail: 'the tail' } as const;

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
        {wordsOf(hold)} The shelf carries this turn up to{' '}
        {formatQuantity(balance.greatestSpeed, 'speed', { system, decimals: 0 }).text}.
      </p>
      <div class="hold-pair">
        <Reading
          label="Lean"
          measure="angle"
          size="small"
          value={balance.lean}
          working={() => balance.explain('run.normalForce', 'run.sidewaysForce', 'run.lean')}
        />
        <Reading
          label="At the boot"
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
          onClick={() => changeConditions('Load', { loadN: load })}
          title="The load a skier in balance puts on the snow at this speed in this turn"
        >
          {`Load it as in balance: ${formatQuantity(load, 'force', { system }).text}`}
        </button>
      )}
    </>
  );
}

function wordsOf(hold: Hold): string {
  if (hold.skids) return 'The skier leans more than the shelf is steep: the ski skids.';
  if (hold.slips) return `It carves, but ${PARTS[hold.lostFirst]} slips.`;
  if (hold.lostFirst === 'boot') return 'It holds from tip to tail.';
  return `It holds; ${PARTS[hold.lostFirst]} would let go first.`;
}
