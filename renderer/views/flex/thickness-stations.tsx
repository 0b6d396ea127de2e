import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { Dialog, NumberCell } from '../../kit/index.ts';
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
        aria-label={`Thickness of layer ${at + 1}, ${range} mm along the ski: edit`}
        onClick={() => {
          open.value = true;
        }}
      >
        {range}
      </button>
      {open.value && (
        <Dialog
          title={`Thickness of ${layer.material}`}
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
                The same everywhere
              </button>
            )
          }
        >
          <table class="flex-table">
            <thead>
              <tr>
                <th scope="col" class="number">
                  From rear contact, mm
                </th>
                <th scope="col" class="number">
                  Thickness, mm
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
                      label={`Thickness at ${station.fromTailMm} mm`}
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
