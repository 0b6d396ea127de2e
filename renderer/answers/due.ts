import type { TuneEntry } from '../../core/pair/index.ts';
import { type DueAfter, t } from '../state/index.ts';

/** One kind of care: when it was last given, how long ago, and whether it is due. */
export interface Care {
  /** ISO day; null when the log has none. */
  readonly last: string | null;
  /** Whole days until `today`; negative when the entry is dated ahead. */
  readonly days: number | null;
  readonly due: boolean;
}

export interface DueState {
  readonly edge: Care;
  readonly wax: Care;
  readonly due: boolean;
}

const DAY = 86_400_000;

/** Whole days from one ISO day to another. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY);

/** What is due for a pair on an ISO day. What was never logged is due. */
export function dueState(tunes: readonly TuneEntry[], after: DueAfter, today: string): DueState {
  const edge = care(
    tunes.filter(tune => tune.sideAngleDeg !== undefined || tune.baseBevelDeg !== undefined),
    after.edgeDays,
    today,
  );
  const wax = care(
    tunes.filter(tune => (tune.wax ?? '').trim() !== ''),
    after.waxDays,
    today,
  );
  return { edge, wax, due: edge.due || wax.due };
}

function care(tunes: readonly TuneEntry[], after: number, today: string): Care {
  const last = tunes.reduce<string | null>(
    (latest, { date }) => (latest === null || date > latest ? date : latest),
    null,
  );
  if (last === null) return { last, days: null, due: true };
  const days = daysBetween(last, today);
  return { last, days, due: days >= after };
}

/** "today", "3 days ago", "never". */
export function agoText({ days }: Care): string {
  return ago(days, 'squad.daysAgo');
}

/** The same where room is short: "3 d ago". */
export const agoShort = ({ days }: Care): string => ago(days, 'squad.daysAgoShort');

function ago(days: number | null, key: 'squad.daysAgo' | 'squad.daysAgoShort'): string {
  if (days === null) return t('squad.never');
  return days < 0 ? t('squad.datedAhead') : t(key, { days });
}

/** What is due in words; empty when nothing is. */
export function dueText({ edge, wax }: DueState): string {
  if (edge.due) return t(wax.due ? 'squad.edgesAndWax' : 'squad.edges');
  return wax.due ? t('squad.wax') : '';
}

/** The longer something is due the greater; never logged comes first. */
export const urgency = ({ edge, wax }: DueState, after: DueAfter): number =>
  Math.max(overdue(edge, after.edgeDays), overdue(wax, after.waxDays));

const overdue = ({ days }: Care, after: number) => (days === null ? Number.POSITIVE_INFINITY : days - after);
