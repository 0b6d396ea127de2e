import type { JSX } from 'preact';
import type { Sentence } from '../../../core/language/index.ts';
import { MM } from '../../../core/units/index.ts';
import { type Bendable, pressedShape, rest, setupOf } from '../../answers/index.ts';
import { Figure, Segments, type Size } from '../../kit/index.ts';
import { conditions, t } from '../../state/index.ts';
import { enlarged } from './bench.ts';
import { SideFigures } from './side-figures.tsx';
import { SideLoad } from './side-load.tsx';
import { Supports, Table } from './side-rest.tsx';
import { type Shown, sideScale } from './side-scale.ts';
import { SideSki } from './side-ski.tsx';
import { useHeld } from './use-held.ts';

/** The skis from the side, boot centres together, bending under one load on the bench or on a flat table. */
export function SideView({ pairs, lead }: { pairs: readonly Bendable[]; lead: Bendable }): JSX.Element {
  const load = conditions.value.benchLoadN;
  const shown = pairs.map(pair => ({ pair, shape: pressedShape(pair, setupOf(pair.ski, load), rest.value) }));
  return (
    <Figure
      title={t('flex.sideView')}
      class="side-view"
      description={t('flex.sideViewUnder', {
        load: { quantity: 'force', value: load },
        shown: shown.map(
          ({ pair, shape }): Sentence => ({
            key: 'flex.comesDown',
            values: { name: pair.name, deflection: { quantity: 'deflection', value: shape.deflection } },
          }),
        ),
      })}
      note={pairs.length > 1 ? t('shape.together') : ''}
      tools={<SideTools />}
      rows={() => sideRows(shown)}
    >
      {size => <Drawing shown={shown} lead={lead} size={size} />}
    </Figure>
  );
}

function SideTools(): JSX.Element {
  return (
    <>
      <Segments
        label={t('flex.lyingOn')}
        labelHidden
        value={rest.value}
        options={[
          { value: 'bench', label: t('flex.supports'), title: t('flex.supportsHint') },
          { value: 'table', label: t('flex.table'), title: t('flex.tableHint') },
        ]}
        onInput={value => {
          rest.value = value;
        }}
      />
      <Segments
        label={t('flex.heights')}
        value={enlarged.value ? 'large' : 'true'}
        options={[
          { value: 'true', label: '×1', title: t('flex.heightsTrue') },
          {
            value: 'large',
            label: t('flex.larger'),
            title: t('flex.largerHint'),
          },
        ]}
        onInput={value => {
          enlarged.value = value === 'large';
        }}
      />
    </>
  );
}

function Drawing(props: { shown: readonly Shown[]; lead: Bendable; size: Size }): JSX.Element {
  const { shown, lead, size } = props;
  const [scale, hold] = useHeld(sideScale(shown, size, rest.value, enlarged.value));
  const own = shown.find(({ pair }) => pair.id === lead.id)!;
  return (
    <g {...hold}>
      {rest.value === 'table' ? (
        <Table scale={scale} width={size.width} />
      ) : (
        <Supports shown={shown} lead={lead} scale={scale} />
      )}
      {[...shown.filter(each => each !== own), own].map(each => (
        <SideSki
          key={each.pair.id}
          shown={each}
          scale={scale}
          active={each === own}
          withFree={each === own}
        />
      ))}
      <SideFigures shown={shown} lead={own} scale={scale} rest={rest.value} />
      <SideLoad shown={own} scale={scale} rest={rest.value} />
    </g>
  );
}

function sideRows(shown: readonly Shown[]): (string | number)[][] {
  const rows: (string | number)[][] = [
    [
      t('common.columnPair'),
      t('common.columnStation'),
      t('flex.column.heightFree'),
      t('flex.column.heightPressed'),
    ],
  ];
  for (const { pair, shape } of shown) {
    for (let i = 0; i < shape.x.length; i++) {
      rows.push([
        pair.name,
        (shape.x[i] / MM).toFixed(1),
        (shape.free[i] / MM).toFixed(3),
        (shape.pressed[i] / MM).toFixed(3),
      ]);
    }
  }
  return rows;
}
