import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import { leastWidthMm, type Pair } from '../../../core/pair/index.ts';
import { NumberCell } from '../../kit/index.ts';
import { t } from '../../state/index.ts';
import {
  type LayupStiffness,
  SIDES,
  type SideField,
  type SideName,
  withoutSide,
  withSide,
} from './layup-edits.ts';
import { MATERIAL_COLUMNS } from './material-columns.ts';

interface Column {
  readonly field: SideField;
  readonly heading: PlainKey;
  readonly label: PlainKey;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
}

const COLUMNS: readonly Column[] = [
  { field: 'widthMm', heading: 'flex.side.widthMm', label: 'flex.side.width', unit: 'mm', min: 0.1, max: 60 },
  {
    field: 'heightMm',
    heading: 'flex.side.heightMm',
    label: 'flex.side.height',
    unit: 'mm',
    min: 0.1,
    max: 20,
  },
  ...MATERIAL_COLUMNS,
];

interface Props {
  readonly pair: Pair;
  readonly layup: LayupStiffness;
  readonly locked: boolean;
  say(problem: string | null): void;
  change(next: LayupStiffness, key?: string | null): void;
}

/** Steel edges and sidewalls, which take the place of the layers beside them; a side that is not there is offered. */
export function LayupSides(props: Props): JSX.Element | null {
  const { layup, locked, change } = props;
  const given = SIDES.filter(({ name }) => layup[name] !== undefined);
  const lacking = locked ? [] : SIDES.filter(({ name }) => layup[name] === undefined);
  if (given.length + lacking.length === 0) return null;
  return (
    <div class="layup-sides">
      {given.length > 0 && (
        <div class="table-scroll">
          <table class="flex-table layup-table">
            <thead>
              <tr>
                <th scope="col">{t('flex.bothSides')}</th>
                {COLUMNS.map(({ field, heading }) => (
                  <th key={field} scope="col" class="number">
                    {t(heading)}
                  </th>
                ))}
                <th scope="col">
                  <span class="sr-only">{t('rack.remove')}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {given.map(({ name }) => (
                <SideRow key={name} {...props} name={name} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {lacking.length > 0 && (
        <p class="layup-offers">
          {lacking.map(({ name, start }) => (
            <button key={name} type="button" onClick={() => change({ ...layup, [name]: start })}>
              {t('flex.addSide', { side: name })}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}

function SideRow(props: Props & { name: SideName }): JSX.Element {
  const { pair, layup, locked, say, change, name } = props;
  // The layers keep some width between the sides, even where the ski is narrowest.
  const widest = (Math.ceil(leastWidthMm(pair) * 5 - 1e-9) - 1) / 10;
  const figures = layup[name] as Partial<Record<SideField, number>>;
  return (
    <tr>
      <th scope="row">{t(`flex.sides.${name}`)}</th>
      {COLUMNS.map(({ field, label, unit, min, max }) => (
        <td key={field} class="number">
          {figures[field] === undefined ? (
            t('flex.toTheTop')
          ) : (
            <NumberCell
              label={t('flex.ofSide', { what: t(label), side: name })}
              unit={unit}
              value={figures[field]}
              min={min}
              max={field === 'widthMm' ? Math.min(name === 'edges' ? 20 : max, widest) : max}
              disabled={locked}
              onProblem={say}
              onInput={value => change(withSide(layup, name, field, value), `${name} ${field}`)}
            />
          )}
        </td>
      ))}
      <td>
        {!locked && (
          <button
            type="button"
            class="bare row-action"
            aria-label={t('flex.removeSide', { side: name })}
            title={t('rack.remove')}
            onClick={() => change(withoutSide(layup, name))}
          >
            ✕
          </button>
        )}
      </td>
    </tr>
  );
}
