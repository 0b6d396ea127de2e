import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { type Mode, modeName } from '../../../core/flex/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { type Bendable, type Modes, modesOf } from '../../answers/index.ts';
import { Chart, Empty, PairBadge, Segments, type Series } from '../../kit/index.ts';
import { editPair } from '../../rack/index.ts';
import { inWords, t, view } from '../../state/index.ts';

/** Natural frequencies, pair by pair, and the shape of the one that is picked. */
export function ModesSheet({
  pairs,
  lead,
}: {
  pairs: readonly Bendable[];
  lead: Bendable | null;
}): JSX.Element {
  const clamped = useSignal(false);
  const picked = useSignal<string | null>(null);
  const { found, error } = modesOf(pairs, clamped.value);
  if (!lead) return <Empty>{t('flex.modesNeedStiffness')}</Empty>;
  const own = found?.get(lead.id);
  const modes = own?.modes ?? [];
  const shown = modes.find(({ kind }) => kind === picked.value) ?? modes[0] ?? null;
  return (
    <div class="stage-split">
      <div class="flex-panel modes-list">
        <div class="figure-head">
          <h2>{t('flex.naturalModes')}</h2>
          <Segments
            label={t('flex.held')}
            labelHidden
            value={clamped.value ? 'clamped' : 'free'}
            options={[
              { value: 'free', label: t('flex.free') },
              { value: 'clamped', label: t('flex.bootHeld'), title: t('flex.bootHeldHint') },
            ]}
            onInput={value => {
              clamped.value = value === 'clamped';
            }}
          />
        </div>
        {!found && <p class="figure-empty">{error ?? t('flex.workingOutModes')}</p>}
        {own?.needs && <NeedsMass pair={lead} needs={inWords(own.needs)} />}
        {found && shown && (
          <ModesTable
            pairs={pairs}
            found={found}
            modes={modes}
            shown={shown}
            pick={name => {
              picked.value = name;
            }}
          />
        )}
      </div>
      <ModeShape pairs={pairs} found={found ?? new Map()} shown={shown} />
    </div>
  );
}

function NeedsMass({ pair, needs }: { pair: Bendable; needs: string }): JSX.Element {
  return (
    <div class="missing-bending">
      <p>{t('flex.lacksMass', { name: pair.name, needs })}</p>
      {pair.readOnly === undefined && (
        <p>
          <button type="button" onClick={() => editPair(pair.id)}>
            {t('edge.openForm')}
          </button>
        </p>
      )}
    </div>
  );
}

const modeOf = (modes: Modes | undefined, kind: string): Mode | undefined =>
  modes?.modes.find(mode => mode.kind === kind);

function ModesTable(props: {
  pairs: readonly Bendable[];
  found: ReadonlyMap<string, Modes>;
  modes: readonly Mode[];
  shown: Mode;
  pick(kind: string): void;
}): JSX.Element {
  const { system } = view.value;
  return (
    <table class="flex-table">
      <thead>
        <tr>
          <th scope="col">{t('flex.modeHz')}</th>
          {props.pairs.map(pair => (
            <th key={pair.id} scope="col" class="number">
              <PairBadge mark={pair.mark} />
              <span class="sr-only">{pair.name}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {props.modes.map(each => (
          <tr key={each.kind} class={each === props.shown ? 'picked' : undefined}>
            <th scope="row">
              <label class="mode-pick">
                <input
                  type="radio"
                  name="mode"
                  checked={each === props.shown}
                  onChange={() => props.pick(each.kind)}
                />
                {inWords(modeName(each))}
              </label>
            </th>
            {props.pairs.map(pair => {
              const mode = modeOf(props.found.get(pair.id), each.kind);
              return (
                <td key={pair.id} class="number">
                  {mode ? formatQuantity(mode.hz, 'frequency', { system }).value : '–'}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The picked mode swings between the line and its mirror image, drawn dotted for the first pair. */
function ModeShape(props: {
  pairs: readonly Bendable[];
  found: ReadonlyMap<string, Modes>;
  shown: Mode | null;
}): JSX.Element {
  const { shown } = props;
  const series = props.pairs.flatMap((pair): Series[] => {
    const mode = shown && modeOf(props.found.get(pair.id), shown.kind);
    if (!mode) return [];
    const y = upright(mode);
    const line = { id: pair.id, label: pair.name, mark: pair.mark, x: mode.x, y };
    return [line];
  });
  const first = series[0];
  const mirror: Series[] = first
    ? [
        {
          id: 'mirror',
          label: t('flex.andBack'),
          x: first.x,
          y: Array.from(first.y, value => -value),
          context: true,
        },
      ]
    : [];
  return (
    <Chart
      title={shown ? t('flex.shapeOf', { mode: modeName(shown) }) : t('flex.modeShape')}
      x={{ label: t('common.fromRearContact'), measure: 'station' }}
      y={{
        label: t(shown?.motion === 'torsion' ? 'flex.twistAxis' : 'flex.swingAxis'),
        measure: 'number',
        domain: [-1.1, 1.1],
      }}
      series={[...series, ...mirror]}
      empty={t('flex.pickMode')}
    />
  );
}

/** The sign of a mode means nothing; the front end is drawn up, so that pairs can be compared. */
function upright({ shape }: Mode): Float64Array {
  const end = Math.abs(shape[shape.length - 1]) > 1e-6 ? shape[shape.length - 1] : shape[0];
  return end < 0 ? shape.map(value => -value) : shape;
}
