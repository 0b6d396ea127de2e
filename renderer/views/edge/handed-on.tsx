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
import { conditions, inWords, t, view } from '../../state/index.ts';

interface LoadLine {
  readonly name: keyof BindingLoads;
  readonly measure: MeasureName;
}

const LOADS: readonly LoadLine[] = [
  { name: 'normal', measure: 'force' },
  { name: 'sideways', measure: 'force' },
  { name: 'foreAft', measure: 'force' },
  { name: 'roll', measure: 'moment' },
  { name: 'pitch', measure: 'moment' },
  { name: 'yaw', measure: 'moment' },
];

/** What a load does, in a right turn. */
const does = (name: keyof BindingLoads, value: number): string =>
  t(`edge.does.${name}`, { way: value < 0 ? 'less' : 'more' });

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
  const title = t('edge.handedTitle', { name: pair.name });
  return (
    <section class="handed-on" aria-label={t('edge.handedLabel', { name: pair.name })}>
      <div class="handed-on-head">
        <h3>{t('edge.handed')}</h3>
        <button type="button" class="quiet" onClick={() => showWorking(title, bindingLoadWorkings(turn, on))}>
          {t('kit.how')}
        </button>
      </div>
      <dl>
        {LOADS.map(({ name, measure }) => (
          <div key={name}>
            <dt>{does(name, loads[name])}</dt>
            <dd>{formatQuantity(Math.abs(loads[name]), measure, { system }).text}</dd>
          </div>
        ))}
      </dl>
      <p>{inWords(BINDING_CAUTION)}</p>
    </section>
  );
}
