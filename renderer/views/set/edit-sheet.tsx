import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { type Gate, gateTurns } from '../../../core/course/index.ts';
import { shownAs } from '../../../core/units/index.ts';
import { Empty, NumberCell } from '../../kit/index.ts';
import { changeCourse, course, moveGate, putGate, removeGate, settle, t, view } from '../../state/index.ts';
import { gateAfter } from './new-gate.ts';
import { roomDown } from './plan-scale.ts';
import { selectedGate, selectGate } from './set-state.ts';

const problem = signal<string | null>(null);
const say = (text: string | null) => {
  problem.value = text;
};

/** The gates as a table: every number can be typed, every step undone. */
export function EditSheet(): JSX.Element {
  const { gates } = course.value;
  if (gates.length === 0) {
    return (
      <Empty>
        <p>{t('set.noGatesToEdit')}</p>
        <button
          type="button"
          onClick={() => changeCourse(t('set.addGateStep'), putGate(0, gateAfter([], -1)))}
        >
          {t('set.addGate')}
        </button>
      </Empty>
    );
  }
  const turns = gateTurns(gates);
  const { unit } = shownAs('distance', view.value.system);
  return (
    <>
      {problem.value && (
        <p class="problem cell-problem" role="alert">
          {problem.value}
        </p>
      )}
      <div class="plain-scroll">
        <table class="plain-table gate-table">
          <caption class="sr-only">{t('set.editCaption')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('set.gate.gate')}</th>
              <th scope="col">{t('set.acrossIn', { unit })}</th>
              <th scope="col">{t('set.downIn', { unit })}</th>
              <th scope="col">{t('set.colour')}</th>
              <th scope="col">{t('set.turn')}</th>
              <th scope="col">
                <span class="sr-only">{t('set.actions')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {gates.map((gate, at) => (
              <GateRow key={at} gate={gate} at={at} turn={turns[at]} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function GateRow({ gate, at, turn }: { gate: Gate; at: number; turn: number }): JSX.Element {
  const { gates } = course.value;
  const { unit, factor } = shownAs('distance', view.value.system);
  const [least, most] = roomDown(gates, at);
  const change = (field: string, part: Partial<Gate>) =>
    changeCourse(t('set.gateStep', { gate: gate.label }), moveGate(at, part), `gate ${at} ${field}`);
  const tidy = (value: number) => Number(value.toFixed(2));
  return (
    <tr class={at === selectedGate.value ? 'picked' : undefined} onFocusCapture={() => selectGate(at)}>
      <th scope="row">
        <input
          class="text-cell gate-label"
          aria-label={t('set.nameOfGate', { at: at + 1 })}
          value={gate.label}
          maxLength={20}
          onInput={event => {
            const label = event.currentTarget.value;
            if (label.trim()) change('label', { label });
          }}
          onBlur={event => {
            event.currentTarget.value = gate.label;
            settle();
          }}
        />
      </th>
      <td>
        <NumberCell
          label={t('set.gateAcross', { gate: gate.label })}
          unit={unit}
          decimals={1}
          value={tidy(gate.x * factor)}
          min={tidy(-100 * factor)}
          max={tidy(100 * factor)}
          onProblem={say}
          onInput={value => change('x', { x: value / factor })}
        />
      </td>
      <td>
        <NumberCell
          label={t('set.gateDown', { gate: gate.label })}
          unit={unit}
          decimals={1}
          value={tidy(gate.y * factor)}
          min={tidy(least * factor)}
          max={tidy(most * factor)}
          onProblem={say}
          onInput={value => change('y', { y: value / factor })}
        />
      </td>
      <td>
        <select
          aria-label={t('set.colourOfGate', { gate: gate.label })}
          value={gate.colour ?? ''}
          onChange={event => {
            change('colour', { colour: event.currentTarget.value || null });
            settle();
          }}
        >
          {[
            '',
            'red',
            'blue',
            ...(gate.colour && !['red', 'blue'].includes(gate.colour) ? [gate.colour] : []),
          ].map(colour => (
            <option key={colour} value={colour}>
              {colour ? t('set.colourName', { colour }) : t('set.noColour')}
            </option>
          ))}
        </select>
      </td>
      <td>
        <select
          aria-label={t('set.turnAtGate', { gate: gate.label })}
          value={gate.turn ?? 0}
          onChange={event => {
            const value = Number(event.currentTarget.value);
            change('turn', { turn: value === 0 ? null : value > 0 ? 1 : -1 });
            settle();
          }}
        >
          <option value={0}>{t('set.asSet', { side: turn > 0 ? 'right' : 'left' })}</option>
          <option value={1}>{t('set.right')}</option>
          <option value={-1}>{t('set.left')}</option>
        </select>
      </td>
      <td class="gate-actions">
        <button
          type="button"
          class="bare row-link"
          aria-label={t('set.addBelowGate', { gate: gate.label })}
          onClick={() => {
            changeCourse(t('set.addGateStep'), putGate(at + 1, gateAfter(gates, at)));
            selectGate(at + 1);
          }}
        >
          {t('set.addBelow')}
        </button>
        <button
          type="button"
          class="bare row-link"
          aria-label={t('set.removeGate', { gate: gate.label })}
          disabled={gates.length <= 2}
          onClick={() => changeCourse(t('set.removeGateStep', { gate: gate.label }), removeGate(at))}
        >
          {t('set.remove')}
        </button>
      </td>
    </tr>
  );
}
