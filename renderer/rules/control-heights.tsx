import type { JSX } from 'preact';
import { t } from '../state/index.ts';
import { ControlCell, type Measured, Where } from './control-cell.tsx';

export const HEIGHTS = [
  {
    field: 'standingHeightMm',
    label: 'rules.standingHeight',
    where: 'rules.standingHeightWhere',
  },
  {
    field: 'bootSoleHeightMm',
    label: 'rules.soleHeight',
    where: 'rules.soleHeightWhere',
  },
] as const;

/** The two heights a control measures once, whatever the number of radius readings beside them. */
export function HeightRows({ of, columns }: { of: Measured; columns: number }): JSX.Element {
  return (
    <>
      {HEIGHTS.map(({ field, label, where }) => (
        <tr key={field}>
          <th scope="row">
            {t(label)}
            <Where of={of} field={field} text={t(where)} />
          </th>
          <td class="number">
            <ControlCell
              of={of}
              field={field}
              label={t(label)}
              value={of.pair[field]}
              range={[10, 120]}
              put={value => ({ [field]: value })}
            />
          </td>
          {columns > 1 && <td colSpan={columns - 1} />}
        </tr>
      ))}
    </>
  );
}
