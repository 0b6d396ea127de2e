import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { layupSections, layupWorkings, localWidth } from '../../../core/flex/index.ts';
import type { PlainKey } from '../../../core/language/index.ts';
import { quadrature } from '../../../core/numeric/index.ts';
import type { Layup, Ski } from '../../../core/pair/index.ts';
import { formatQuantity, type MeasureName } from '../../../core/units/index.ts';
import { Quantity, Reading } from '../../kit/index.ts';
import { t, view } from '../../state/index.ts';

interface SectionReading {
  readonly label: PlainKey;
  readonly measure: MeasureName;
  /** In metric units; the measure's own where absent. */
  readonly decimals?: number;
  readonly of: 'bending' | 'torsion' | 'neutralAxis' | 'massPerLength';
  /** Keys of the workings shown. */
  readonly explained: readonly string[];
}

const READINGS: readonly SectionReading[] = [
  {
    label: 'flex.section.bending',
    measure: 'stiffness',
    decimals: 1,
    of: 'bending',
    explained: ['flex.layup-axis', 'flex.layup-bending'],
  },
  {
    label: 'flex.section.torsion',
    measure: 'stiffness',
    decimals: 1,
    of: 'torsion',
    explained: ['flex.layup-torsion'],
  },
  {
    label: 'flex.section.axis',
    measure: 'width',
    decimals: 2,
    of: 'neutralAxis',
    explained: ['flex.layup-axis'],
  },
  {
    label: 'flex.section.mass',
    measure: 'massPerLength',
    of: 'massPerLength',
    explained: ['flex.layup-mass'],
  },
];

/** What the layers amount to where the ski is cut, and the mass they give the ski between its contact points. */
export function LayupSectionFigures({ ski, layup }: { ski: Ski; layup: Layup }): JSX.Element {
  const cut = useSignal<number | null>(null);
  const at = Math.min(cut.value ?? ski.bootCentre, ski.contactLength);
  const width = localWidth(ski);
  const sections = layupSections(layup, width);
  const section = sections(at);
  const metric = view.value.system === 'metric';
  const mass = quadrature(x => sections(x).massPerLength, 0, ski.contactLength, 60);
  return (
    <div class="layup-figures">
      <Quantity
        label={t('flex.cutAt')}
        measure="station"
        value={at}
        min={0}
        max={ski.contactLength}
        step={0.01}
        onInput={value => {
          cut.value = value;
        }}
      />
      <div class="layup-readings">
        {READINGS.map(({ label, measure, decimals, of, explained }) => (
          <Reading
            key={label}
            label={t(label)}
            measure={measure}
            size="small"
            decimals={metric ? decimals : undefined}
            value={section[of]}
            working={() => layupWorkings(section).filter(each => explained.includes(each.key))}
          />
        ))}
      </div>
      <dl>
        <Figure term={t('flex.thickness')} value={section.thickness} measure="width" />
        <Figure term={t('flex.width')} value={width(at)} measure="width" />
        <Figure term={t('flex.massBetweenContacts')} value={mass} measure="mass" />
      </dl>
    </div>
  );
}

function Figure(props: { term: string; value: number; measure: MeasureName }): JSX.Element {
  const { system } = view.value;
  return (
    <div>
      <dt>{props.term}</dt>
      <dd>{formatQuantity(props.value, props.measure, { system }).text}</dd>
    </div>
  );
}
