import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { layupSections, localWidth } from '../../../core/flex/index.ts';
import { quadrature } from '../../../core/numeric/index.ts';
import type { Layup, Ski } from '../../../core/pair/index.ts';
import { formatQuantity, type MeasureName } from '../../format/index.ts';
import { Quantity } from '../../kit/index.ts';
import { view } from '../../state/index.ts';

/** What the layers amount to where the ski is cut, and the mass they give the ski between its contact points. */
export function LayupSectionFigures({ ski, layup }: { ski: Ski; layup: Layup }): JSX.Element {
  const cut = useSignal<number | null>(null);
  const at = Math.min(cut.value ?? ski.bootCentre, ski.contactLength);
  const width = localWidth(ski);
  const sections = layupSections(layup, width);
  const section = sections(at);
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
      <dl>
        <Figure term="EI" value={section.bending} measure="stiffness" decimals={1} />
        <Figure term="GJ" value={section.torsion} measure="stiffness" decimals={1} note="upper bound" />
        <Figure term="Neutral axis over base" value={section.neutralAxis} measure="width" decimals={2} />
        <Figure term="Thickness" value={section.thickness} measure="width" />
        <Figure term="Width" value={width(at)} measure="width" />
        <Figure term="Mass a metre" value={section.massPerLength} measure="mass" />
        <Figure term="Mass, contact to contact" value={mass} measure="mass" />
      </dl>
    </div>
  );
}

function Figure(props: {
  term: string;
  value: number;
  measure: MeasureName;
  decimals?: number;
  note?: string;
}): JSX.Element {
  const { system } = view.value;
  const decimals = system === 'metric' ? props.decimals : undefined;
  return (
    <div>
      <dt>
        {props.term}
        {props.note && <span class="soft"> {props.note}</span>}
      </dt>
      <dd>{formatQuantity(props.value, props.measure, { system, decimals }).text}</dd>
    </div>
  );
}
