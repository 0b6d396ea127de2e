import type { JSX } from 'preact';
import { type FieldOf, fieldsOf, reachOf, rowOf } from '../../core/conditions/index.ts';
import type { PlainKey } from '../../core/language/index.ts';
import { Quantity } from '../kit/index.ts';
import { type ConditionField, changeConditions, conditions, t } from '../state/index.ts';

/** What a slider, a cell or a grip of one condition is made of, from its row in core/conditions. */
export function conditionProps(field: ConditionField, label: PlainKey = rowOf(field).label) {
  const { measure, step, decimals, whole } = rowOf(field);
  const [min, max] = reachOf(field);
  const name = t(label);
  return {
    label: name,
    measure,
    min,
    max,
    value: conditions.value[field],
    step: step ?? (max - min) / 100,
    log: step === undefined,
    ...(decimals === undefined ? {} : { decimals }),
    onInput: (value: number) => changeConditions(name, { [field]: whole ? Math.round(value) : value }, field),
  };
}

interface Props {
  readonly field: ConditionField;
  /** Key of what it is called here, where that is not its usual label. */
  readonly label?: PlainKey;
  /** A word beside the value. */
  readonly note?: string;
}

/** Slider and field of one condition. */
export const ConditionControl = ({ field, label, note }: Props): JSX.Element => (
  <Quantity {...conditionProps(field, label)} note={note} />
);

type ShownGroup = 'body' | 'glide' | 'limits' | 'gates' | 'pole';

/** Those of some groups, but for those that a view draws by itself. */
export const ConditionControls = (props: {
  readonly groups: readonly ShownGroup[];
  readonly but?: readonly FieldOf<ShownGroup>[];
}): JSX.Element => (
  <>
    {fieldsOf(...props.groups)
      .filter(field => !props.but?.includes(field))
      .map(field => (
        <ConditionControl key={field} field={field} />
      ))}
  </>
);
