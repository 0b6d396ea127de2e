import type { JSX } from 'preact';
import type { Pair } from '../../core/pair/index.ts';
import { formatQuantity, MM } from '../../core/units/index.ts';
import { agoShort, type Care, radiusOf, type SquadRow, sidecutOf } from '../answers/index.ts';
import { PairBadge } from '../kit/index.ts';
import { editPair, remove, removeRow, toggle } from '../rack/index.ts';
import { disciplineText, isUnsaved, PAIR_MARKS, project, t, view } from '../state/index.ts';
import { selectRow } from './squad-state.ts';

interface Props {
  readonly row: SquadRow;
  readonly selected: boolean;
  readonly focusable: boolean;
}

/** One pair. Looking at a name shows its log at the right; Space ticks it, Enter edits it, Delete removes it. */
export function SquadTableRow({ row, selected, focusable }: Props): JSX.Element {
  const { entry, pair, owner, due, odd } = row;
  const { id } = entry;
  const place = project.value.chosen.indexOf(id);
  const { system } = view.value;
  const radius = radiusOf(pair);
  const length = formatQuantity(pair.lengthMm * MM, 'skiLength', { system, decimals: 0 });
  const { sideAngleDeg, baseBevelDeg } = pair.edges ?? {};
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === ' ') toggle(entry);
    else if (event.key === 'Enter') editPair(id);
    else if (event.key === 'Delete') removeRow(event, 'tr', '.squad-name', () => remove(entry));
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <tr class={selected ? 'selected' : undefined} onClick={() => selectRow(id)}>
      <td>
        <input
          type="checkbox"
          tabIndex={-1}
          checked={place >= 0}
          aria-label={t('rack.choose', { name: pair.name })}
          onClick={event => event.stopPropagation()}
          onChange={event => {
            toggle(entry);
            event.currentTarget.checked = project.value.chosen.includes(id);
          }}
        />
      </td>
      <th scope="row">
        <button
          type="button"
          class="bare squad-name"
          tabIndex={focusable ? 0 : -1}
          aria-current={selected ? 'true' : undefined}
          onFocus={() => selectRow(id)}
          onKeyDown={onKeyDown}
        >
          {place >= 0 && <PairBadge mark={PAIR_MARKS[place]!} />}
          <span class="squad-words" title={pair.name}>
            {pair.name}
          </span>
          {isUnsaved(entry) && (
            <span class="unsaved" title={t('squad.inNoFile')}>
              ●<span class="sr-only"> {t('common.unsaved')}</span>
            </span>
          )}
          {pair.demo && <span class="demo">{t('common.demo')}</span>}
        </button>
      </th>
      <td class="squad-owner" title={owner}>
        {owner || <span class="soft">–</span>}
      </td>
      <td>{disciplineText(pair.discipline)}</td>
      <td class="number">{length.text}</td>
      <td class="number">{radius === null ? '–' : <Radius pair={pair} radius={radius} />}</td>
      <td class="number">
        {sideAngleDeg ?? '–'}° / {baseBevelDeg ?? '–'}°
      </td>
      <CareCell care={due.edge} />
      <CareCell care={due.wax} />
      <td>
        {odd.length > 0 && (
          <span class="odd-flag" title={odd.join('; ')}>
            ⚑ {odd.length}
            <span class="sr-only"> {t('squad.reasons', { count: odd.length })}</span>
          </span>
        )}
      </td>
    </tr>
  );
}

/** The uncertainty gives way first where the table is narrow; the digits shown still follow it. */
function Radius({ pair, radius }: { pair: Pair; radius: number }): JSX.Element {
  const { system } = view.value;
  const uncertainty = sidecutOf(pair).radiusUncertainty;
  const { value, plusMinus, unit } = formatQuantity(radius, 'radius', { system, uncertainty });
  return (
    <>
      {value}
      {plusMinus && <span class="gives-way"> ± {plusMinus}</span>} {unit}
    </>
  );
}

function CareCell({ care }: { care: Care }): JSX.Element {
  return (
    <td class={care.due ? 'due' : undefined}>
      {agoShort(care)}
      {care.due && <span class="due-word">{t('squad.due')}</span>}
    </td>
  );
}
