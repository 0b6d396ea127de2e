import type { TuneEntry } from '../../core/pair/index.ts';
import { readIn } from '../../core/units/index.ts';
import { t } from '../state/index.ts';

/** The tune form as typed. */
export interface TuneDraft {
  readonly date: string;
  readonly side: string;
  readonly base: string;
  readonly wax: string;
  readonly structure: string;
  readonly note: string;
}

export type TuneField = keyof TuneDraft;
/** What was done and when; the pair is named when it goes into the log. */
export type Tuned = Pick<TuneEntry, 'date' | 'sideAngleDeg' | 'baseBevelDeg' | 'wax' | 'structure' | 'note'>;

export type ReadTune =
  | { readonly ok: true; readonly done: Tuned }
  | { readonly ok: false; readonly messages: Partial<Record<TuneField, string>> };

/** What was typed as a log entry, or for each field what was found and what is accepted. */
export function readTune(draft: TuneDraft, today: string): ReadTune {
  const messages: Partial<Record<TuneField, string>> = {};
  const date = draft.date.trim();
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(Date.parse(date))) {
    messages.date = date === '' ? t('squad.noDate', { today }) : t('squad.badDate', { found: date, today });
  } else if (date > today) {
    messages.date = t('squad.laterDate', { found: date, today });
  }
  const degrees = (field: 'side' | 'base', name: string, least: number, most: number) => {
    const text = draft[field].trim();
    if (text === '') return undefined;
    const read = readIn(text, '°');
    if (read.ok && read.value >= least && read.value <= most) return read.value;
    messages[field] = t('squad.badAngle', { field: name, found: text, least, most });
    return undefined;
  };
  const sideAngleDeg = degrees('side', t('squad.sideEdge'), 80, 90);
  const baseBevelDeg = degrees('base', t('squad.baseBevel'), 0, 5);
  const words = (field: 'wax' | 'structure' | 'note', most: number) => {
    const text = draft[field].trim();
    if (text.length > most) {
      messages[field] = t('squad.tooLong', { count: text.length, most });
    }
    return text === '' ? undefined : text;
  };
  const all = {
    sideAngleDeg,
    baseBevelDeg,
    wax: words('wax', 120),
    structure: words('structure', 120),
    note: words('note', 2000),
  };
  const given = Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
  if (Object.keys(messages).length === 0 && Object.keys(given).length === 0) {
    messages.side = t('squad.nothingToLog');
  }
  if (Object.keys(messages).length > 0) return { ok: false, messages };
  return { ok: true, done: { date, ...given } as Tuned };
}
