import { isAccepted } from '../../core/conditions/index.ts';
import { type ConditionField, type Conditions, DEFAULT_CONDITIONS } from './project.ts';

type Given = Readonly<Record<string, unknown>>;

const partOf = (value: unknown): Given =>
  typeof value === 'object' && value !== null ? (value as Given) : {};

/** Conditions as a draft says them; an earlier layout kept some of them with the slope. */
export function conditionsGiven(draft: Given): Given {
  const { clearanceM, traverseDeg, limits } = partOf(draft.slope);
  const { edgeDeg: edgeMostDeg, angulationDeg: angulationMostDeg, ...others } = partOf(limits);
  const earlier = { clearanceM, traverseDeg, edgeMostDeg, angulationMostDeg, ...others };
  const said = Object.entries(earlier).filter(([, value]) => value !== undefined);
  return { ...Object.fromEntries(said), ...partOf(draft.conditions) };
}

/** Conditions from a draft; what is none, or out of its range, is as usual. */
export function conditionsFrom(draft: Given): Conditions {
  const given = conditionsGiven(draft);
  const always = Object.entries(DEFAULT_CONDITIONS).map(([field, usual]) => {
    const value = given[field];
    return [field, isAccepted(field as ConditionField, value) ? value : usual];
  });
  const { wallStrengthKPa } = given;
  return {
    ...(Object.fromEntries(always) as unknown as Conditions),
    ...(isAccepted('wallStrengthKPa', wallStrengthKPa) ? { wallStrengthKPa } : {}),
  };
}
