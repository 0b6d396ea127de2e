import type { JSX } from 'preact';
import { HELD_BACK_WORDS } from '../../../core/line/index.ts';
import { decimal, formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import { setRunOf, setRuns } from '../../answers/index.ts';
import { exportTable } from '../../files/index.ts';
import { Empty, PairBadge } from '../../kit/index.ts';
import { activePair, course, fileStem, t, view } from '../../state/index.ts';
import { selectedGate, selectGate } from './set-state.ts';
import { Waiting } from './waiting.tsx';

const COLUMNS = [
  'set.gate.time',
  'set.gate.split',
  'set.gate.behind',
  'set.gate.speed',
  'set.gate.radius',
  'set.gate.edge',
  'set.gate.lean',
  'set.gate.grip',
  'set.gate.load',
] as const;

/** The active pair's quickest run, gate by gate. */
export function GateTable(): JSX.Element {
  const active = activePair.value;
  const run = active && setRunOf(active.id);
  const first = setRuns.value.value?.pairs[0];
  if (!active || !run || !first) {
    return active ? (
      <Waiting />
    ) : (
      <Empty>
        <p>{t('set.chooseForGates')}</p>
      </Empty>
    );
  }
  const { system } = view.value;
  const text = (value: number, measure: MeasureName, decimals?: number) =>
    Number.isNaN(value) ? '–' : formatQuantity(value, measure, { system, decimals }).text;
  const labels = setRuns.value.of?.gates.map(gate => gate.label) ?? [];
  const cells = run.gates.map((gate, at) => [
    t('set.plainSeconds', { seconds: decimal(gate.seconds, 2) }),
    t('set.plainSeconds', { seconds: decimal(gate.split, 2) }),
    first === run ? '–' : signedSeconds(gate.seconds - first.gates[at]!.seconds),
    text(gate.speed, 'speed', 1),
    text(gate.radius, 'radius', 1),
    text(gate.edge, 'angle', 0),
    text(gate.lean, 'angle', 0),
    text(gate.grip, 'angle', 1),
    t('set.bodyWeights', { load: decimal(gate.load, 1) }),
  ]);
  const rows = () => [
    [t('set.gate.gate'), ...COLUMNS.map(key => t(key)), t('set.gate.heldBack')],
    ...cells.map((row, at) => [labels[at] ?? '', ...row, t(HELD_BACK_WORDS[run.gates[at]!.heldBackBy])]),
  ];
  return (
    <>
      <div class="set-head">
        <PairBadge mark={active.mark} />
        <strong>{active.name}</strong>
        <span class="reading-hint">{t('set.gatesHint')}</span>
        <button
          type="button"
          class="bare row-link"
          onClick={() => void exportTable(`${fileStem(course.value.name || 'set')}-gates.csv`, rows())}
        >
          {t('set.saveTable')}
        </button>
      </div>
      <div class={setRuns.value.running ? 'plain-scroll stale' : 'plain-scroll'}>
        <table class="plain-table">
          <caption class="sr-only">{t('set.gatesCaption', { name: active.name })}</caption>
          <thead>
            <tr>
              <th scope="col">{t('set.gate.gate')}</th>
              {COLUMNS.map(key => (
                <th scope="col" class="number" key={key}>
                  {t(key)}
                </th>
              ))}
              <th scope="col">{t('set.gate.heldBack')}</th>
            </tr>
          </thead>
          <tbody>
            {cells.map((row, at) => (
              <tr key={at} class={at === selectedGate.value ? 'picked' : undefined}>
                <th scope="row">
                  <button
                    type="button"
                    class="bare gate-pick"
                    aria-label={t('set.showGate', { gate: labels[at] ?? '' })}
                    onClick={() => selectGate(at)}
                  >
                    {labels[at]}
                  </button>
                </th>
                {row.map((cell, column) => (
                  <td class="number" key={COLUMNS[column]}>
                    {cell}
                  </td>
                ))}
                <td>{t(HELD_BACK_WORDS[run.gates[at]!.heldBackBy])}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

const signedSeconds = (seconds: number): string =>
  t('set.plainSeconds', { seconds: `${seconds < 0 ? '−' : '+'}${decimal(Math.abs(seconds), 2)}` });
