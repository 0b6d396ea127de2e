import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import type { PairStiffness } from '../../core/pair/index.ts';
import { Message } from './message.tsx';
import { type Draft, type StiffnessKind, stiffnessText } from './pair-draft.ts';

const TITLES = { bending: 'Bending stiffness EI', torsion: 'Torsional stiffness GJ' } as const;

const KINDS: readonly { readonly kind: StiffnessKind; readonly label: string }[] = [
  { kind: 'none', label: 'Not given' },
  { kind: 'uniform', label: 'The same everywhere' },
  { kind: 'stations', label: 'Stations along the ski' },
  { kind: 'formula', label: 'Formula' },
];

const HINTS: Record<StiffnessKind, Record<'bending' | 'torsion', string>> = {
  none: {
    bending: 'Without it the ski cannot be bent: Flex and Edge ask for it.',
    torsion: 'The ski is then rigid in torsion.',
  },
  uniform: { bending: 'In N·m².', torsion: 'In N·m².' },
  stations: {
    bending: 'One a line: station from the rear contact point in mm, and N·m².',
    torsion: 'One a line: station from the rear contact point in mm, and N·m².',
  },
  formula: {
    bending:
      'In N·m²; s runs from 0 at the rear contact point to 1 at the front: 40 + 260*(1-abs(2*s-1)^1.6)',
    torsion:
      'In N·m²; s runs from 0 at the rear contact point to 1 at the front: 20 + 120*(1-abs(2*s-1)^1.6)',
  },
  layup: { bending: 'Made of layers, in the Flex view.', torsion: 'Made of layers, in the Flex view.' },
};

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
  const kinds = stiffness?.kind === 'layup' ? [...KINDS, { kind: 'layup' as const, label: 'Layup' }] : KINDS;
  const id = useId();
  const shared = {
    value: text,
    disabled: locked,
    'aria-label': TITLES[name],
    'aria-invalid': message !== undefined,
    'aria-describedby': message ? `${id}-problem` : `${id}-hint`,
  };
  return (
    <fieldset>
      <legend>{TITLES[name]}</legend>
      <select
        value={kind}
        disabled={locked}
        aria-label={`How ${TITLES[name]} is given`}
        onChange={event => {
          const chosen = event.currentTarget.value;
          const kept = chosen === stiffness?.kind ? stiffnessText(stiffness) : '';
          type({ [`${name}.kind`]: chosen, [`${name}.text`]: kept });
        }}
      >
        {kinds.map(each => (
          <option key={each.kind} value={each.kind}>
            {each.label}
          </option>
        ))}
      </select>
      <p class="form-hint" id={`${id}-hint`}>
        {HINTS[kind][name]}
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
