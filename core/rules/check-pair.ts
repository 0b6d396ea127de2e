import type { Sentence } from '../language/index.ts';
import { type MeasuringUncertainty, TAPE_AND_CALIPER } from '../shape/index.ts';
import { type ControlFinding, controlFinding } from './control-finding.ts';
import { controlReadingsOf, type StatedControl } from './control-of.ts';
import { type ControlReading, rulebookRadius } from './control-radius.ts';
import type { Category, Discipline, Edition, Limit, LimitedQuantity } from './edition.ts';
import { editionText } from './edition-words.ts';
import { season2024 } from './editions.ts';
import { type LimitVerdict, limitVerdict, worstOf } from './limit-verdict.ts';
import { rulebookUncertainty } from './rulebook-uncertainty.ts';

/** What a check needs of a pair file. */
export interface CheckedPair {
  readonly discipline?: Discipline | undefined;
  readonly lengthMm: number;
  readonly contactLengthMm: number;
  readonly tipWidthMm: number;
  readonly waistWidthMm: number;
  readonly tailWidthMm: number;
  /** Readings of the equipment control as the file states them; used once all five are there. */
  readonly control?: StatedControl | undefined;
  readonly standingHeightMm?: number | undefined;
  readonly bootSoleHeightMm?: number | undefined;
}

export interface CheckOptions {
  readonly category: Category;
  /** The pair's own discipline unless given. */
  readonly discipline?: Discipline | undefined;
  /** The newest built-in edition unless given. */
  readonly edition?: Edition | undefined;
  /** Lower-level races accept a little less length where the edition says so. */
  readonly lowerLevel?: boolean | undefined;
  readonly uncertainty?: MeasuringUncertainty | undefined;
}

export interface CheckItem {
  readonly rule: string;
  readonly quantity: LimitedQuantity;
  readonly least: number | null;
  readonly most: number | null;
  /** The limit in the rulebook's own unit. */
  readonly limit: Sentence;
  /** In the quantity's unit; null when the pair does not tell. */
  readonly found: number | null;
  readonly plusMinus: number | null;
  readonly verdict: LimitVerdict;
  readonly status: Limit['status'];
  readonly source: string;
  /** How the value was come by, where that matters. */
  readonly note: Sentence | null;
  /** What the control's readings came to, where the value is theirs. */
  readonly control: ControlFinding | null;
}

export interface PairCheck {
  readonly edition: string;
  readonly discipline: Discipline;
  readonly category: Category;
  /** The worst of the items that could be judged; `not given` when none could. */
  readonly verdict: LimitVerdict;
  readonly items: readonly CheckItem[];
  readonly caution: readonly Sentence[];
}

interface Found {
  readonly value: number | null;
  readonly plusMinus: number;
  readonly note: Sentence | null;
  readonly control?: ControlFinding;
}

const units: Record<LimitedQuantity, string> = {
  lengthMm: 'mm',
  radiusM: 'm',
  waistWidthMm: 'mm',
  frontWidthMm: 'mm',
  standingHeightMm: 'mm',
  bootSoleMm: 'mm',
};

/**
 * Checks a pair against every limit an edition holds for its discipline and category. The control's readings
 * decide over the catalogue widths once one of them is complete.
 */
export function checkPair(pair: CheckedPair, options: CheckOptions): PairCheck {
  const edition = options.edition ?? season2024;
  const discipline = options.discipline ?? pair.discipline ?? 'other';
  const { category } = options;
  const items = edition.limits
    .filter(limit => limit.disciplines.includes(discipline) && limit.categories.includes(category))
    .map(limit => checkLimit(limit, findQuantity(limit, pair, options), options.lowerLevel ?? false));
  return {
    edition: edition.edition,
    discipline,
    category,
    verdict: worstOf(items.map(item => item.verdict)),
    items,
    caution: caution(edition, discipline, category, items),
  };
}

function checkLimit(limit: Limit, found: Found, lowerLevel: boolean): CheckItem {
  const eased = lowerLevel && limit.least !== undefined ? (limit.lowerLevelTolerance ?? 0) : 0;
  const least = limit.least === undefined ? undefined : limit.least - eased;
  const unit = units[limit.quantity];
  return {
    rule: limit.rule,
    quantity: limit.quantity,
    least: least ?? null,
    most: limit.most ?? null,
    limit: limitSentence(limit, least, eased, unit),
    found: found.value,
    plusMinus: found.value === null ? null : found.plusMinus,
    verdict: limitVerdict(found.value, found.plusMinus, least, limit.most),
    status: limit.status,
    source: limit.source,
    note: found.note,
    control: found.control ?? null,
  };
}

function limitSentence(
  { least: full, most }: Limit,
  least: number | undefined,
  eased: number,
  unit: string,
): Sentence {
  const inUnit = (value: number | undefined) => `${value}\u00a0${unit}`;
  const limit: Sentence =
    most === undefined
      ? { key: 'rules.limit.least', values: { least: inUnit(least) } }
      : least === undefined
        ? { key: 'rules.limit.most', values: { most: inUnit(most) } }
        : { key: 'rules.limit.leastAndMost', values: { least: inUnit(least), most: inUnit(most) } };
  return eased > 0
    ? { key: 'rules.limit.eased', values: { limit, full: inUnit(full), by: inUnit(eased) } }
    : limit;
}

function findQuantity({ quantity, least }: Limit, pair: CheckedPair, options: CheckOptions): Found {
  const uncertainty = options.uncertainty ?? TAPE_AND_CALIPER;
  const readings = controlReadingsOf(pair.control);
  const control = readings[0];
  switch (quantity) {
    case 'lengthMm':
      return control
        ? {
            value: control.developedLength * 1000,
            plusMinus: 1000 * uncertainty.uLength,
            note: { key: 'rules.reading.developedLength' },
          }
        : { value: pair.lengthMm, plusMinus: 1000 * uncertainty.uLength, note: null };
    case 'waistWidthMm':
      return {
        value: control ? control.waistWidth * 1000 : pair.waistWidthMm,
        plusMinus: 1000 * uncertainty.uWidth,
        note: null,
      };
    case 'frontWidthMm':
      return { value: pair.tipWidthMm, plusMinus: 1000 * uncertainty.uWidth, note: null };
    case 'radiusM':
      return control ? controlFound(readings, uncertainty, least) : catalogueFound(pair, uncertainty);
    case 'standingHeightMm':
      return {
        value: pair.standingHeightMm ?? null,
        plusMinus: 1000 * uncertainty.uWidth,
        note: null,
      };
    case 'bootSoleMm':
      return {
        value: pair.bootSoleHeightMm ?? null,
        plusMinus: 1000 * uncertainty.uWidth,
        note: null,
      };
  }
}

function controlFound(
  readings: readonly ControlReading[],
  uncertainty: MeasuringUncertainty,
  least: number | undefined,
): Found {
  const control = controlFinding(readings, uncertainty, least);
  const { compared, plusMinus, note } = control;
  return { value: compared, plusMinus, note, control };
}

function catalogueFound(pair: CheckedPair, uncertainty: MeasuringUncertainty): Found {
  const measured = [pair.contactLengthMm, pair.tipWidthMm, pair.tailWidthMm, pair.waistWidthMm];
  const [length, tip, tail, waist] = measured.map(mm => mm / 1000);
  const radius = rulebookRadius(length, tip, tail, waist);
  if (!Number.isFinite(radius)) {
    return {
      value: null,
      plusMinus: 0,
      note: { key: 'rules.note.noSidecut' },
    };
  }
  return {
    value: radius,
    plusMinus: rulebookUncertainty(length, tip, tail, waist, uncertainty),
    note: { key: 'rules.note.catalogueWidths' },
  };
}

function caution(
  edition: Edition,
  discipline: Discipline,
  category: Category,
  items: readonly CheckItem[],
): readonly Sentence[] {
  const missing = items.filter(item => item.verdict === 'not given').map(item => item.rule);
  const said: (Sentence | false)[] = [
    items.length === 0 && {
      key: 'rules.caution.noLimits',
      values: { discipline, category: { key: `category.${category}` } },
    },
    missing.length > 0 && {
      key: 'rules.caution.missing',
      values: { rules: listed(missing.map(editionText)) },
    },
    items.some(item => item.status === 'from memory') && { key: 'rules.caution.fromMemory' },
    edition.notes !== undefined && edition.notes !== '' && editionText(edition.notes),
    { key: 'rules.caution.inForce' },
  ];
  return said.filter(each => each !== false);
}

/** Rules one after another; a comma may stand in the name of one. */
const listed = (rules: readonly Sentence[]): Sentence =>
  rules.reduceRight((next, rule) => ({ key: 'rules.caution.then', values: { rule, next } }));
