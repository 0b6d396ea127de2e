import type { JSX } from 'preact';
import {
  BINDING_CAUTION,
  type BindingLoads,
  bindingLoads,
  bindingLoadWorkings,
  pushOf,
} from '../../../core/boot/index.ts';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import type { BootOfPair } from '../../answers/index.ts';
import { showWorking } from '../../kit/index.ts';
import { conditions, inWords, view } from '../../state/index.ts';

interface LoadLine {
  readonly name: keyof BindingLoads;
  readonly measure: MeasureName;
  /** What it does where it is positive, and where it is negative, in a right turn. */
  readonly does: readonly [string, string];
}

const LOADS: readonly LoadLine[] = [
  { name: 'normal', measure: 'force', does: ['presses', 'lifts'] },
  { name: 'sideways', measure: 'force', does: ['pushes in', 'pushes out'] },
  { name: 'foreAft', measure: 'force', does: ['pulls ahead', 'pulls back'] },
  { name: 'roll', measure: 'moment', does: ['flattens', 'tips'] },
  { name: 'pitch', measure: 'moment', does: ['lifts toe', 'lifts heel'] },
  { name: 'yaw', measure: 'moment', does: ['toe in', 'toe out'] },
];

/** Forces and moments at the sole, by what they do to the boot (in: towards the turn's centre), and their caution. */
export function HandedOn({ boot }: { boot: BootOfPair }): JSX.Element {
  const { question, answer, fore, pair } = boot;
  const { system } = view.value;
  const turn = {
    load: pushOf(question.normal, answer.angulation),
    lean: question.lean,
    edgeAngle: question.edgeAngle,
  };
  const on = {
    height: question.standingHeight,
    halfWaist: question.halfWaist,
    friction: conditions.value.friction,
    ...(question.centre && { centre: { ...question.centre, fore: fore ?? 0 } }),
  };
  const loads = bindingLoads(turn, on);
  const title = `Handed to the binding of ${pair.name}, turning right`;
  return (
    <section class="handed-on" aria-label={`What ${pair.name} hands to the binding`}>
      <div class="handed-on-head">
        <h3>Handed to the binding</h3>
        <button type="button" class="quiet" onClick={() => showWorking(title, bindingLoadWorkings(turn, on))}>
          how?
        </button>
      </div>
      <dl>
        {LOADS.map(({ name, measure, does }) => (
          <div key={name}>
            <dt>{does[loads[name] < 0 ? 1 : 0]}</dt>
            <dd>{formatQuantity(Math.abs(loads[name]), measure, { system }).text}</dd>
          </div>
        ))}
      </dl>
      <p>{inWords(BINDING_CAUTION)}</p>
    </section>
  );
}
