import type { JSX } from 'preact';
import { ControlCell, type Measured, Where } from './control-cell.tsx';

export const HEIGHTS = [
  {
    field: 'standingHeightMm',
    label: 'Standing height',
    where: 'base to the underside of the boot sole',
  },
  {
    field: 'bootSoleHeightMm',
    label: 'Boot sole height',
    where: 'underside of the sole to the foot bed',
  },
] as const;

/** The two heights a control measures once, whatever the number of radius readings beside them. */
export function HeightRows({ of, columns }: { of: Measured; columns: number }): JSX.Element {
  return (
    <>
      {HEIGHTS.map(({ field, label, where }) => (
        <tr key={field}>
          <th scope="row">
            {label}
            <Where of={of} field={field} text={where} />
          </th>
          <td class="number">
            <ControlCell
              of={of}
              field={field}
              label={label}
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
