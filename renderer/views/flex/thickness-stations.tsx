import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { Dialog, NumberCell } from '../../kit/index.ts';
import { t } from '../../state/index.ts';
import type { Layer } from './layup-edits.ts';

type Stations = Exclude<Layer['thicknessMm'], number>;

/** A thickness that varies along the ski: its range in the table, its stations in a window. */
export function ThicknessStations(props: {
  readonly layer: Layer;
  readonly at: number;
  readonly stations: Stations;
  readonly locked: boolean;
  edit(thicknessMm: Layer['thicknessMm']): void;
}): JSX.Element {
  const { stations, layer, at, locked, edit } = props;
  const open = useSignal(false);
  const problem = useSignal<string | null>(null);
  const values = stations.map(station => station.thicknessMm);
  const range = `${Math.min(...values)}–${Math.max(...values)}`;
  return (
    <>
      <button
        type="button"
        class="bare varies"
        aria-label={t('flex.thicknessAlong', { layer: at + 1, range })}
        onClick={() => {
          open.value = true;
        }}
      >
        {range}
      </button>
      {open.value && (
        <Dialog
          title={t('flex.thicknessOf', { material: layer.material })}
          onClose={() => {
            open.value = false;
          }}
          footer={
            !locked && (
              <button
                type="button"
                onClick={() => {
                  open.value = false;
                  edit(values[Math.floor(values.length / 2)]);
                }}
              >
                {t('flex.sameEverywhere')}
              </button>
            )
          }
        >
          <table class="flex-table">
            <thead>
              <tr>
                <th scope="col" class="number">
                  {t('flex.column.fromRear')}
                </th>
                <th scope="col" class="number">
                  {t('flex.column.thickness')}
                </th>
              </tr>
            </thead>
            <tbody>
              {stations.map((station, i) => (
                <tr key={station.fromTailMm}>
                  <th scope="row" class="number">
                    {station.fromTailMm}
                  </th>
                  <td class="number">
                    <NumberCell
                      label={t('flex.thicknessAt', { at: station.fromTailMm })}
                      unit="mm"
                      value={station.thicknessMm}
                      min={0.01}
                      max={60}
                      disabled={locked}
                      onProblem={text => {
                        problem.value = text;
                      }}
                      onInput={thicknessMm =>
                        edit(stations.map((each, k) => (k === i ? { ...each, thicknessMm } : each)))
                      }
                    />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          {problem.value && (
            <p class="problem" role="alert">
              {problem.value}
            </p>
          )}
        </Dialog>
      )}
    </>
  );
}
