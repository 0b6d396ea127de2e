import type { JSX } from 'preact';
import { flexWorkings, springs, torsionalSpring } from '../../../core/flex/index.ts';
import { DEGREE } from '../../../core/units/index.ts';
import type { Working } from '../../../core/working/index.ts';
import {
  type Bendable,
  beamOf,
  benchDeflection,
  bendable,
  pressedShape,
  rest,
  setupOf,
  tableDeflection,
} from '../../answers/index.ts';
import { PairReadings, Reading } from '../../kit/index.ts';
import { activePair, chosenPairs, conditions, perPair, ski, t } from '../../state/index.ts';
import { BenchControls } from './bench-controls.tsx';
import { FirstFrequency } from './first-frequency.tsx';
import { LargeBendNote } from './large-bend-note.tsx';
import { TableReadings } from './table-readings.tsx';

const workingsOf = perPair(pair => flexWorkings(ski(pair)));

/** The workings of a pair under these keys, worked out when somebody asks. */
const explain =
  (pair: Bendable, ...keys: string[]) =>
  (): Working[] =>
    workingsOf(pair.pair).filter(each => keys.includes(each.key));

const springsOf = perPair(pair => {
  const { bending } = beamOf(pair);
  if (!bending) return null;
  const one = ski(pair);
  return springs(bending, { ...one, length: one.contactLength });
});

export function FlexReadings(): JSX.Element | null {
  const active = activePair.value;
  if (!active) return null;
  const pairs = bendable(chosenPairs.value);
  const own = pairs.find(pair => pair.id === active.id);
  if (pairs.length === 0) {
    return <p class="reading-hint">{t('flex.empty.readings')}</p>;
  }
  const load = conditions.value.benchLoadN;
  const lying = rest.value;
  return (
    <>
      <BenchControls lead={own ?? pairs[0]} />
      <PairReadings
        label={lying === 'bench' ? t('flex.deflectionAtLoad') : t('flex.deflectionOnTable')}
        measure="deflection"
        activeId={active.id}
        rows={pairs.map(pair => ({
          id: pair.id,
          mark: pair.mark,
          of: pair.name,
          decimals: 1,
          value: pressedShape(pair, setupOf(pair.ski, load), lying).deflection,
          working: () => (lying === 'bench' ? benchDeflection(pair, load) : tableDeflection(pair, load)),
        }))}
      />
      {own && lying === 'bench' && <LargeBendNote pair={own} />}
      {own && lying === 'table' && <TableReadings pair={own} />}
      <PairReadings
        label={t('flex.springAtBoot')}
        measure="spring"
        activeId={active.id}
        rows={pairs.map(pair => ({
          id: pair.id,
          mark: pair.mark,
          of: pair.name,
          value: springsOf(pair.pair)?.centre ?? null,
          note: pair.id === active.id ? t('flex.onContactPoints') : undefined,
          working: explain(pair, 'flex.spring', 'flex.uniform-equivalent'),
        }))}
      />
      {own && <Springs pair={own} />}
      {own && <FirstFrequency pair={own} uniform={explain(own, 'flex.first-frequency-uniform')} />}
    </>
  );
}

/** Shovel and rear with the boot sole clamped, and how they balance. */
function Springs({ pair }: { pair: Bendable }): JSX.Element | null {
  const found = springsOf(pair.pair);
  if (!found) return null;
  const { torsion } = beamOf(pair.pair);
  const front = pair.ski.bootCentre + pair.ski.soleLength / 2;
  return (
    <section class="reading-group">
      <h2>{t('flex.soleClamped', { name: pair.name })}</h2>
      <Reading
        label={t('print.shovel')}
        measure="spring"
        size="small"
        value={found.shovel}
        working={explain(pair, 'flex.spring-shovel')}
      />
      <Reading
        label={t('flex.rear')}
        measure="spring"
        size="small"
        value={found.rear}
        working={explain(pair, 'flex.spring-rear')}
      />
      <Reading
        label={t('flex.balance')}
        measure="number"
        size="small"
        value={found.balance}
        working={explain(pair, 'flex.spring-shovel', 'flex.spring-rear', 'flex.spring-balance')}
      />
      <Reading
        label={t('flex.torsionalSpring')}
        measure="moment"
        decimals={2}
        size="small"
        value={torsion ? torsionalSpring(torsion, front, pair.ski.contactLength) * DEGREE : null}
        why={t('flex.rigidInTorsion')}
        working={explain(pair, 'flex.torsional-spring')}
      />
    </section>
  );
}
