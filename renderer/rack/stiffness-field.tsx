import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import type { PairStiffness } from '../../core/pair/index.ts';
import { t } from '../state/index.ts';
import { Message } from './message.tsx';
import { type Draft, type StiffnessKind, stiffnessText } from './pair-draft.ts';

const TITLES = { bending: 'rack.bendingTitle', torsion: 'rack.torsionTitle' } as const;

const KINDS: readonly StiffnessKind[] = ['none', 'uniform', 'stations', 'formula'];

/** A profile to begin a formula with, N·m². */
const EXAMPLES = {
  bending: '40 + 260*(1-abs(2*s-1)^1.6)',
  torsion: '20 + 120*(1-abs(2*s-1)^1.6)',
} as const;

function hintText(kind: StiffnessKind, name: 'bending' | 'torsion'): string {
  if (kind === 'none') return t(`rack.hint.${name}.none`);
  return kind === 'formula' ? t('rack.hint.formula', { example: EXAMPLES[name] }) : t(`rack.hint.${kind}`);
}

interface Props {
  readonly name: 'bending' | 'torsion';
  readonly stiffness: PairStiffness | undefined;
  readonly draft: Draft;
  readonly message: string | undefined;
  readonly locked: boolean;
  type(change: Draft): void;
}

/** How a stiffness is stated: kind, and the number, table or formula that goes with it. */
export function StiffnessField({ name, stiffness, draft, message, locked, type }: Props): JSX.Element {
  const kind = (draft[`${name}.kind`] ?? stiffness?.kind ?? 'none') as StiffnessKind;
  const text = draft[`${name}.text`] ?? (stiffness?.kind === kind ? stiffnessText(stiffness) : '');
  const kinds = stiffness?.kind === 'layup' ? [...KINDS, 'layup' as const] : KINDS;
  const id = useId();
  const shared = {
    value: text,
    disabled: locked,
    'aria-label': t(TITLES[name]),
    'aria-invalid': message !== undefined,
    'aria-describedby': message ? `${id}-problem` : `${id}-hint`,
  };
  return (
    <fieldset>
      <legend>{t(TITLES[name])}</legend>
      <select
        value={kind}
        disabled={locked}
        aria-label={t('rack.howGiven', { what: t(TITLES[name]) })}
        onChange={event => {
          const chosen = event.currentTarget.value;
          const kept = chosen === stiffness?.kind ? stiffnessText(stiffness) : '';
          type({ [`${name}.kind`]: chosen, [`${name}.text`]: kept });
        }}
      >
        {kinds.map(each => (
          <option key={each} value={each}>
            {t(`rack.kind.${each}`)}
          </option>
        ))}
      </select>
      <p class="form-hint" id={`${id}-hint`}>
        {hintText(kind, name)}
      </p>
      {kind === 'stations' && (
        <textarea
          rows={6}
          {...shared}
          onInput={event => type({ [`${name}.text`]: event.currentTarget.value })}
        />
      )}
      {(kind === 'uniform' || kind === 'formula') && (
        <input {...shared} onInput={event => type({ [`${name}.text`]: event.currentTarget.value })} />
      )}
      <Message text={message} id={`${id}-problem`} />
    </fieldset>
  );
}
