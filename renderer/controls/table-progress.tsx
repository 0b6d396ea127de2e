import type { JSX } from 'preact';
import { decimal } from '../../core/units/index.ts';
import type { TableShown } from '../answers/index.ts';
import { t } from '../state/index.ts';

/** How far the slowest table has come, or why one is not there. */
export function TableProgress(props: {
  readonly tables: readonly TableShown[];
  readonly said?: string;
}): JSX.Element | null {
  const { tables, said = t('controls.solving') } = props;
  const failure = tables.find(each => each.failure && !each.missing)?.failure;
  if (failure) return <span class="table-progress">{failure}</span>;
  const shares = tables.flatMap(each => (each.progress === null ? [] : [each.progress]));
  if (shares.length === 0) return null;
  return (
    <span class="table-progress">
      {t('controls.progress', { doing: said, share: decimal(Math.min(...shares) * 100, 0) })}
    </span>
  );
}
