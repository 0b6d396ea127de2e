import type { JSX } from 'preact';
import { useId, useRef, useState } from 'preact/hooks';
import { shownAs } from '../../core/units/index.ts';
import { Dialog } from '../kit/index.ts';
import {
  DISCIPLINES,
  disciplineText,
  edit,
  type RackEntry,
  replacePair,
  report,
  settle,
  t,
  view,
} from '../state/index.ts';
import { Message } from './message.tsx';
import { applyDraft, type Draft, type Messages, stationsText, textOf } from './pair-draft.ts';
import { FIELD_GROUPS, type NumberField, otherwiseText } from './pair-fields.ts';
import { StiffnessField } from './stiffness-field.tsx';

interface Props {
  readonly entry: RackEntry;
  onClose(): void;
}

/**
 * All fields of a pair file. What is typed is checked at once: a whole pair goes into the rack and shows in
 * the views behind; otherwise the text stays as typed with its message, and the last good pair stands.
 */
export function PairForm({ entry, onClose }: Props): JSX.Element {
  const { system } = view.value;
  const first = useRef(entry.pair);
  const [draft, setDraft] = useState<Draft>({});
  const [messages, setMessages] = useState<Messages>({});
  const locked = entry.readOnly !== undefined;

  const type = (change: Draft) => {
    const typed = { ...draft, ...change };
    setDraft(typed);
    const result = applyDraft(first.current, typed, system);
    setMessages(result.ok ? {} : result.messages);
    if (result.ok)
      edit(
        t('rack.editPair', { name: result.pair.name }),
        replacePair(entry.id, result.pair),
        `form ${entry.id}`,
      );
  };
  const revert = () => {
    setDraft({});
    setMessages({});
    edit(
      t('rack.editPair', { name: first.current.name }),
      replacePair(entry.id, first.current),
      `form ${entry.id}`,
    );
  };
  const open = Object.keys(messages).length;
  const close = () => {
    if (open > 0) {
      report(t('rack.keepsLastGood', { name: entry.pair.name, count: open }), 'error');
    }
    settle();
    onClose();
  };
  const field = { draft, messages, locked, type };
  const text = (name: 'name' | 'notes') => draft[name] ?? first.current[name] ?? '';

  return (
    <Dialog
      title={locked ? entry.pair.name : t('rack.editPair', { name: entry.pair.name })}
      place="drawer"
      onClose={close}
      footer={
        <>
          <p class="form-state" role="status">
            {locked
              ? entry.readOnly
              : open > 0
                ? t('rack.needsAttention', { count: open })
                : Object.keys(draft).length > 0
                  ? t('rack.applied')
                  : ''}
          </p>
          {!locked && (
            <button type="button" disabled={Object.keys(draft).length === 0} onClick={revert}>
              {t('rack.revert')}
            </button>
          )}
          <button
            type="button"
            class="primary"
            onClick={event => {
              const dialog = event.currentTarget.closest('dialog');
              const faulty = dialog?.querySelector<HTMLElement>('[aria-invalid="true"]');
              if (faulty) faulty.focus();
              else dialog?.close();
            }}
          >
            {t('rack.done')}
          </button>
        </>
      }
    >
      <form class="pair-form" onSubmit={event => event.preventDefault()}>
        {messages.file && (
          <p class="problem" role="alert">
            {messages.file}
          </p>
        )}
        <div class="form-grid">
          <label class="form-wide">
            <span>{t('common.name')}</span>
            <input
              autofocus
              // As after Tab: what is typed takes the place of what stands there.
              onFocus={event => event.currentTarget.select()}
              value={text('name')}
              disabled={locked}
              aria-invalid={messages.name !== undefined}
              onInput={event => type({ name: event.currentTarget.value })}
            />
            <Message text={messages.name} />
          </label>
          <label>
            <span>{t('common.discipline')}</span>
            <select
              value={draft.discipline ?? first.current.discipline ?? 'other'}
              disabled={locked}
              onChange={event => type({ discipline: event.currentTarget.value })}
            >
              {DISCIPLINES.map(each => (
                <option key={each} value={each}>
                  {disciplineText(each)}
                </option>
              ))}
            </select>
          </label>
        </div>
        {FIELD_GROUPS.map(group => (
          <fieldset key={group.title}>
            <legend>{t(group.title)}</legend>
            {group.hint && <p class="form-hint">{t(group.hint)}</p>}
            <div class="form-grid">
              {group.fields.map(each => (
                <NumberLine
                  key={each.field}
                  {...field}
                  field={each}
                  start={textOf(first.current, each, system)}
                  unit={shownAs(each.measure, system).unit}
                />
              ))}
            </div>
          </fieldset>
        ))}
        <fieldset>
          <legend>{t('rack.widthStations')}</legend>
          <label>
            <span class="form-hint">{t('rack.widthStationsHint')}</span>
            <textarea
              rows={5}
              value={draft.widthStations ?? stationsText(first.current.widthStations ?? [], 'widthMm')}
              disabled={locked}
              placeholder={'0  104\n340  79.5'}
              aria-invalid={messages.widthStations !== undefined}
              onInput={event => type({ widthStations: event.currentTarget.value })}
            />
            <Message text={messages.widthStations} />
          </label>
        </fieldset>
        {(['bending', 'torsion'] as const).map(name => (
          <StiffnessField
            key={name}
            name={name}
            stiffness={first.current[name]}
            draft={draft}
            message={messages[name]}
            locked={locked}
            type={type}
          />
        ))}
        <fieldset>
          <legend>{t('common.notes')}</legend>
          <textarea
            rows={3}
            aria-label={t('common.notes')}
            value={text('notes')}
            disabled={locked}
            onInput={event => type({ notes: event.currentTarget.value })}
          />
          <Message text={messages.notes} />
        </fieldset>
      </form>
    </Dialog>
  );
}

interface LineProps {
  readonly field: NumberField;
  readonly start: string;
  readonly unit: string;
  readonly draft: Draft;
  readonly messages: Messages;
  readonly locked: boolean;
  type(change: Draft): void;
}

function NumberLine({ field, start, unit, draft, messages, locked, type }: LineProps): JSX.Element {
  const id = useId();
  const message = messages[field.field];
  return (
    <div class="form-line">
      <label for={id}>{t(field.label)}</label>
      <span class="form-number">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={draft[field.field] ?? start}
          placeholder={otherwiseText(field, view.value.system)}
          disabled={locked}
          aria-invalid={message !== undefined}
          aria-describedby={message ? `${id}-problem` : undefined}
          onInput={event => type({ [field.field]: event.currentTarget.value })}
        />
        <span class="unit">{unit}</span>
      </span>
      <Message text={message} id={`${id}-problem`} />
    </div>
  );
}
