import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { NumberCell } from '../../kit/index.ts';
import { type ChosenPair, settle, t } from '../../state/index.ts';
import {
  copiedLayer,
  type Layer,
  type LayupStiffness,
  movedLayer,
  varying,
  withLayer,
  withoutLayer,
} from './layup-edits.ts';
import { MATERIAL_COLUMNS } from './material-columns.ts';
import { ThicknessStations } from './thickness-stations.tsx';

interface Props {
  readonly active: ChosenPair;
  readonly layup: LayupStiffness;
  readonly problem: Signal<string | null>;
  change(next: LayupStiffness, key?: string | null): void;
}

/** The layers from topsheet to base, as they lie; every figure is edited in place. */
export function LayupTable({ active, layup, change, problem }: Props): JSX.Element {
  const locked = active.readOnly !== undefined;
  const order = layup.layers.map((_, at) => at).reverse();
  const say = (text: string | null) => {
    problem.value = text;
  };
  return (
    <div class="table-scroll">
      <table class="flex-table layup-table layer-table">
        <thead>
          <tr>
            <th scope="col">{t('flex.column.layer')}</th>
            <th scope="col" class="number">
              {t('flex.column.thickness')}
            </th>
            {MATERIAL_COLUMNS.map(({ field, heading }) => (
              <th key={field} scope="col" class="number">
                {t(heading)}
              </th>
            ))}
            <th scope="col" class="number">
              {t('flex.column.width')}
            </th>
            <th scope="col">
              <span class="sr-only">{t('flex.column.order')}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {order.map(at => {
            const layer = layup.layers[at];
            const set = (field: string, part: Partial<Layer>) =>
              change(withLayer(layup, at, part), `${at} ${field}`);
            return (
              <tr key={at}>
                <th scope="row">
                  <input
                    class="text-cell"
                    aria-label={t('flex.materialOf', { layer: at + 1 })}
                    value={layer.material}
                    maxLength={80}
                    disabled={locked}
                    onInput={event => {
                      const material = event.currentTarget.value;
                      if (material.trim()) set('material', { material });
                    }}
                    onBlur={event => {
                      event.currentTarget.value = layer.material;
                      settle();
                    }}
                  />
                </th>
                <td class="number">
                  <Thickness
                    layer={layer}
                    at={at}
                    contactLengthMm={active.pair.contactLengthMm}
                    locked={locked}
                    say={say}
                    edit={thicknessMm => set('thickness', { thicknessMm })}
                  />
                </td>
                {MATERIAL_COLUMNS.map(({ field, label, unit, min, max }) => (
                  <td key={field} class="number">
                    <NumberCell
                      label={t('flex.ofLayer', { what: t(label), layer: at + 1 })}
                      unit={unit}
                      value={layer[field]}
                      min={min}
                      max={max}
                      disabled={locked}
                      onProblem={say}
                      onInput={value => set(field, { [field]: value })}
                    />
                  </td>
                ))}
                <td class="number">
                  <NumberCell
                    label={t('flex.widthOfLayer', { layer: at + 1 })}
                    unit="%"
                    value={(layer.widthShare ?? 1) * 100}
                    min={1}
                    max={100}
                    disabled={locked}
                    onProblem={say}
                    onInput={value => set('width', { widthShare: value / 100 })}
                  />
                </td>
                <td>{!locked && <RowActions layup={layup} at={at} change={change} />}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function Thickness(props: {
  layer: Layer;
  at: number;
  contactLengthMm: number;
  locked: boolean;
  say(text: string | null): void;
  edit(thicknessMm: Layer['thicknessMm']): void;
}): JSX.Element {
  const { thicknessMm } = props.layer;
  if (typeof thicknessMm !== 'number') return <ThicknessStations {...props} stations={thicknessMm} />;
  return (
    <>
      <NumberCell
        label={t('flex.thicknessOfLayer', { layer: props.at + 1 })}
        unit="mm"
        value={thicknessMm}
        min={0.01}
        max={60}
        disabled={props.locked}
        onProblem={props.say}
        onInput={props.edit}
      />
      {!props.locked && (
        <button
          type="button"
          class="bare row-action"
          title={t('flex.letVary')}
          aria-label={t('flex.letVaryOf', { layer: props.at + 1 })}
          onClick={() => props.edit(varying(thicknessMm, props.contactLengthMm))}
        >
          {t('flex.vary')}
        </button>
      )}
    </>
  );
}

function RowActions(props: {
  layup: LayupStiffness;
  at: number;
  change(next: LayupStiffness): void;
}): JSX.Element {
  const { layup, at, change } = props;
  const count = layup.layers.length;
  const action = (text: string, label: string, able: boolean, next: () => LayupStiffness) => (
    <button
      type="button"
      class="bare row-action"
      aria-label={t('flex.layerAction', {
        action: label,
        layer: at + 1,
        material: layup.layers[at].material,
      })}
      title={label}
      disabled={!able}
      onClick={() => change(next())}
    >
      {text}
    </button>
  );
  return (
    <span class="row-actions">
      {action('↑', t('flex.moveUp'), at < count - 1, () => movedLayer(layup, at, 1))}
      {action('↓', t('flex.moveDown'), at > 0, () => movedLayer(layup, at, -1))}
      {action(t('flex.copy'), t('flex.copyLayer'), count < 40, () => copiedLayer(layup, at))}
      {action('✕', t('rack.remove'), count > 1, () => withoutLayer(layup, at))}
    </span>
  );
}
