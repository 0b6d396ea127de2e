import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { layupSections, layupWorkings, localWidth } from '../../../core/flex/index.ts';
import { quadrature } from '../../../core/numeric/index.ts';
import type { Layup, Ski } from '../../../core/pair/index.ts';
import { formatQuantity, type MeasureName } from '../../format/index.ts';
import { Quantity, Reading } from '../../kit/index.ts';
import { view } from '../../state/index.ts';

/** What the layers amount to where the ski is cut, and the mass they give the ski between its contact points. */
export function LayupSectionFigures({ ski, layup }: { ski: Ski; layup: Layup }): JSX.Element {
  const cut = useSignal<number | null>(null);
  const at = Math.min(cut.value ?? ski.bootCentre, ski.contactLength);
  const width = localWidth(ski);
  const sections = layupSections(layup, width);
  const section = sections(at);
  const how = (key: string) => () => layupWorkings(section).filter(each => each.key === key);
  const bending = () =>
    layupWorkings(section).filter(each => ['flex.layup-axis', 'flex.layup-bending'].includes(each.key));
  const metric = view.value.system === 'metric';
  const mass = quadrature(x => sections(x).massPerLength, 0, ski.contactLength, 60);
  return (
    <div class="layup-figures">
      <Quantity
        label="Cut at, from rear contact"
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
        <Reading
          label="EI"
          measure="stiffness"
          size="small"
          decimals={metric ? 1 : undefined}
          value={section.bending}
          working={bending}
        />
        <Reading
          label="GJ, upper bound"
          measure="stiffness"
          size="small"
          decimals={metric ? 1 : undefined}
          value={section.torsion}
          working={how('flex.layup-torsion')}
        />
        <Reading
          label="Neutral axis over base"
          measure="width"
          size="small"
          decimals={metric ? 2 : undefined}
          value={section.neutralAxis}
          working={how('flex.layup-axis')}
        />
        <Reading
          label="Mass a metre"
          measure="mass"
          size="small"
          value={section.massPerLength}
          working={how('flex.layup-mass')}
        />
      </div>
      <dl>
        <Figure term="Thickness" value={section.thickness} measure="width" />
        <Figure term="Width" value={width(at)} measure="width" />
        <Figure term="Mass, contact to contact" value={mass} measure="mass" />
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
