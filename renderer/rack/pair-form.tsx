import type { JSX } from 'preact';
import { useId, useRef, useState } from 'preact/hooks';
import { shownAs } from '../../core/units/index.ts';
import { Dialog } from '../kit/index.ts';
import { edit, type RackEntry, replacePair, report, settle, view } from '../state/index.ts';
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
    if (result.ok) edit(`Edit ${result.pair.name}`, replacePair(entry.id, result.pair), `form ${entry.id}`);
  };
  const takeBack = () => {
    setDraft({});
    setMessages({});
    edit(`Edit ${first.current.name}`, replacePair(entry.id, first.current), `form ${entry.id}`);
  };
  const open = Object.keys(messages).length;
  const close = () => {
    if (open > 0) {
      const fields = open === 1 ? 'one field' : `${open} fields`;
      report(`${entry.pair.name} keeps the last good values: ${fields} could not be used as typed`, 'error');
    }
    settle();
    onClose();
  };
  const field = { draft, messages, locked, type };
  const text = (name: 'name' | 'notes') => draft[name] ?? first.current[name] ?? '';

  return (
    <Dialog
      title={locked ? entry.pair.name : `Edit ${entry.pair.name}`}
      place="drawer"
      onClose={close}
      footer={
        <>
          <p class="form-state" role="status">
            {locked
              ? entry.readOnly
              : open > 0
                ? `${open === 1 ? 'One field needs' : `${open} fields need`} attention; the last good pair is in use.`
                : Object.keys(draft).length > 0
                  ? 'In use. Undo takes it back.'
                  : ''}
          </p>
          {!locked && (
            <button type="button" disabled={Object.keys(draft).length === 0} onClick={takeBack}>
              Take back
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
            Done
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
            <span>Name</span>
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
            <span>Discipline</span>
            <select
              value={draft.discipline ?? first.current.discipline ?? 'other'}
              disabled={locked}
              onChange={event => type({ discipline: event.currentTarget.value })}
            >
              {['SL', 'GS', 'SG', 'DH', 'other'].map(each => (
                <option key={each} value={each}>
                  {each}
                </option>
              ))}
            </select>
          </label>
        </div>
        {FIELD_GROUPS.map(group => (
          <fieldset key={group.title}>
            <legend>{group.title}</legend>
            {group.hint && <p class="form-hint">{group.hint}</p>}
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
          <legend>Measured width stations</legend>
          <label>
            <span class="form-hint">
              Optional; used from five on. One a line: station from the rear contact point and full width,
              both in mm.
            </span>
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
          <legend>Notes</legend>
          <textarea
            rows={3}
            aria-label="Notes"
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
      <label for={id}>{field.label}</label>
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
