import { splitUnit } from '../table/index.ts';

/** Which column of a technician's sheet holds what, and in which unit its heading says it is. */

const sheetFields = [
  'owner',
  'name',
  'discipline',
  'lengthMm',
  'contactLengthMm',
  'tipWidthMm',
  'waistWidthMm',
  'tailWidthMm',
  'waistFromTailMm',
  'camberMm',
  'bootCentreFromTailMm',
  'sideAngleDeg',
  'baseBevelDeg',
  'massKg',
  'notes',
] as const;

export type SheetField = (typeof sheetFields)[number];

export interface SheetColumn {
  /** The heading as it stands in the file. */
  readonly heading: string;
  /** null for a column this program has no use for; its cells are kept with the pair. */
  readonly field: SheetField | null;
  /** Unit written in the heading, lower case; null when none is. */
  readonly unit: string | null;
  /** What cells kept with the pair are kept under: the heading, made different where two are the same. */
  readonly label: string;
}

/** Headings as written, lower case, letters only. */
const synonyms: Record<SheetField, readonly string[]> = {
  owner: ['owner', 'ownername', 'athlete', 'athletename', 'skier', 'racer', 'belongsto', 'who'],
  name: ['name', 'pair', 'pairname', 'ski', 'skis', 'skiname', 'model', 'label', 'skipair'],
  discipline: ['discipline', 'event', 'disc', 'type', 'use'],
  lengthMm: ['length', 'skilength', 'overalllength', 'totallength', 'fulllength', 'developedlength'],
  contactLengthMm: [
    'contactlength',
    'contact',
    'runninglength',
    'runningsurface',
    'contactline',
    'effectiveedge',
  ],
  tipWidthMm: ['tip', 'tipwidth', 'widthtip', 'shovel', 'shovelwidth', 'front', 'frontwidth', 'widthfront'],
  waistWidthMm: [
    'waist',
    'waistwidth',
    'widthwaist',
    'underfoot',
    'underfootwidth',
    'middle',
    'middlewidth',
    'centre',
    'center',
    'narrowest',
  ],
  tailWidthMm: ['tail', 'tailwidth', 'widthtail', 'heel', 'heelwidth', 'rear', 'rearwidth', 'widthrear'],
  waistFromTailMm: ['waistfromtail', 'waiststation', 'waistposition', 'tailtowaist'],
  camberMm: ['camber', 'camberheight'],
  bootCentreFromTailMm: [
    'bootcentrefromtail',
    'bootcenterfromtail',
    'bootcentre',
    'bootcenter',
    'mountpoint',
  ],
  sideAngleDeg: ['sideedge', 'sideangle', 'sideedgeangle', 'side', 'edgeangle', 'sidebevel'],
  baseBevelDeg: ['basebevel', 'base', 'bevel', 'baseangle', 'baseedge', 'baseedgebevel', 'baseedgeangle'],
  massKg: ['mass', 'weight', 'skimass', 'skiweight', 'massofoneski', 'massperski', 'weightperski'],
  notes: ['notes', 'note', 'comment', 'comments', 'remark', 'remarks'],
};

const fieldOf = new Map<string, SheetField>(
  sheetFields.flatMap(field => synonyms[field].map(word => [word, field] as const)),
);

/** Reads the heading row; a field named twice keeps its first column, the second is kept as it is. */
export function readColumns(headings: readonly string[]): SheetColumn[] {
  const taken = new Set<SheetField>();
  const labels = new Set<string>();
  /** How often each heading came; counting on from there keeps thousands of equal ones quick. */
  const times = new Map<string, number>();
  return headings.map((text, index) => {
    const { word, unit } = splitUnit(text);
    const known = fieldOf.get(word) ?? null;
    const field = known !== null && taken.has(known) ? null : known;
    if (field !== null) taken.add(field);
    const heading = text.trim();
    const plain = heading === '' || heading === '__proto__' ? `column ${index + 1}` : heading;
    let label = plain;
    let count = times.get(plain) ?? 1;
    while (labels.has(label)) {
      count++;
      label = `${plain} (${count})`;
    }
    times.set(plain, count);
    labels.add(label);
    return { heading, field, unit, label };
  });
}

/** How many fields of a pair these headings name. */
export function countKnown(headings: readonly string[]): number {
  const known = headings.map(text => fieldOf.get(splitUnit(text).word));
  return new Set(known.filter(field => field !== undefined)).size;
}

/** The last column of a file of lines at fault: why they were. Read again, such a file says it anew. */
export const FAULT_HEADING = 'what was wrong';
