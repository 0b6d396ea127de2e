import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { exportTable } from '../../files/index.ts';
import { Segments } from '../../kit/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { t } from '../../state/index.ts';
import { type Field, field } from './bench.ts';
import { layupBehind } from './layup-behind.ts';
import { type LayupStiffness, startingLayup } from './layup-edits.ts';
import { layupRows } from './layup-rows.ts';
import { LayupSectionFigures } from './layup-section.tsx';
import { LayupSides } from './layup-sides.tsx';
import { LayupTable } from './layup-table.tsx';
import { setLayers } from './stiffness-edits.ts';

const SYMBOLS: Record<Field, string> = { bending: 'EI', torsion: 'GJ' };

/** The layers a stiffness is worked out from, base first, and what they amount to at a section. */
export function LayupSheet({ active }: { active: ChosenPair }): JSX.Element {
  const problem = useSignal<string | null>(null);
  /** The pair whose shared layers are being changed for one stiffness only. */
  const parted = useSignal<string | null>(null);
  const behind = layupBehind(active.pair, field.value, parted.value === active.id);
  if (!behind) return <NoLayers active={active} />;
  const { layup, reaches, layered, shared } = behind;
  const [shown] = reaches;
  const si = active.ski[shown];
  const locked = active.readOnly !== undefined;
  const other: Field = shown === 'bending' ? 'torsion' : 'bending';
  const change = (next: LayupStiffness, key: string | null = null) => {
    setLayers(active.id, reaches, next, key && `${active.id} ${reaches.join(' ')} ${key}`);
  };
  return (
    <section class="flex-panel layup-sheet" aria-label={t('flex.layers')}>
      <div class="figure-head">
        <h2>
          {t('flex.layersBehind', {
            letter: active.mark.letter,
            name: active.name,
            reaches: reaches.map(each => SYMBOLS[each]).join(', '),
          })}
        </h2>
        <div class="figure-tools">
          {layered.length === 2 && (
            <Segments
              label={t('flex.layersBehindWhich')}
              labelHidden
              value={reaches.length === 2 ? 'both' : shown}
              options={[
                ...(shared ? [{ value: 'both' as const, label: t('flex.both') }] : []),
                ...layered.map(value => ({ value, label: SYMBOLS[value] })),
              ]}
              onInput={value => {
                parted.value = value === 'both' ? null : active.id;
                if (value !== 'both') field.value = value;
              }}
            />
          )}
          {!locked && !shared && (
            <button
              type="button"
              onClick={() => {
                parted.value = null;
                setLayers(active.id, [other], layup);
              }}
            >
              {t('flex.useForToo', { symbol: SYMBOLS[other] })}
            </button>
          )}
          <button type="button" onClick={() => void exportTable('layers.csv', layupRows(layup))}>
            {t('kit.table')}
          </button>
        </div>
      </div>
      <LayupTable active={active} layup={layup} change={change} problem={problem} />
      <LayupSides
        pair={active.pair}
        layup={layup}
        locked={locked}
        say={text => {
          problem.value = text;
        }}
        change={change}
      />
      {problem.value && (
        <p class="problem" role="alert">
          {problem.value}
        </p>
      )}
      {si?.kind === 'layup' && <LayupSectionFigures ski={active.ski} layup={si.layup} />}
    </section>
  );
}

function NoLayers({ active }: { active: ChosenPair }): JSX.Element {
  return (
    <div class="missing-bending">
      <p>{t('flex.noLayers', { name: active.name })}</p>
      {active.readOnly === undefined && (
        <p>
          <button type="button" onClick={() => setLayers(active.id, ['bending'], startingLayup())}>
            {t('flex.startFromLayup')}
          </button>
        </p>
      )}
    </div>
  );
}
