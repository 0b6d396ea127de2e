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
  return headings.map((text, index) => {
    const { word, unit } = splitUnit(text);
    const known = fieldOf.get(word) ?? null;
    const field = known !== null && taken.has(known) ? null : known;
    if (field !== null) taken.add(field);
    const heading = text.trim();
    const plain = heading === '' || heading === '__proto__' ? `column ${index + 1}` : heading;
    let label = plain;
    for (let count = 2; labels.has(label); count++) label = `${plain} (${count})`;
    labels.add(label);
    return { heading, field, unit, label };
  });
}

/** The last column of a file of lines at fault: why they were. Read again, such a file says it anew. */
export const FAULT_HEADING = 'what was wrong';

/** Separates `Tip width (mm)`, `tip_width_mm`, `tipWidthMm` and `Tip width, mm` into word and unit. */
export function splitUnit(heading: string): { word: string; unit: string | null } {
  const text = heading.trim().replace(/([a-z])([A-Z])/g, '$1 $2');
  const bracketed = /[([]\s*([^)\]]*)[)\]]\s*$/.exec(text);
  if (bracketed) {
    const inside = bracketed[1].trim().toLowerCase();
    const unit = knownUnit(inside);
    return { word: lettersOf(text.slice(0, bracketed.index) + (unit === null ? ` ${inside}` : '')), unit };
  }
  const parts = text.split(/[\s_,./-]+/).filter(part => part !== '');
  const last = parts.length > 1 ? knownUnit(parts[parts.length - 1].toLowerCase()) : null;
  return { word: lettersOf((last === null ? parts : parts.slice(0, -1)).join('')), unit: last };
}

/** The program's word for a unit, or null when it is not one a sheet may use. */
export function knownUnit(text: string): string | null {
  switch (text.replace(/\.$/, '')) {
    case 'mm':
    case 'millimetres':
    case 'millimeters':
      return 'mm';
    case 'cm':
    case 'centimetres':
    case 'centimeters':
      return 'cm';
    case 'm':
    case 'metres':
    case 'meters':
      return 'm';
    case 'in':
    case 'inch':
    case 'inches':
    case '"':
    case '″':
      return 'in';
    case 'lb':
    case 'lbs':
    case 'pounds':
      return 'lb';
    case 'kg':
    case 'kilograms':
      return 'kg';
    case 'g':
    case 'grams':
      return 'g';
    case '°':
    case 'deg':
    case 'degree':
    case 'degrees':
      return 'deg';
    default:
      return null;
  }
}

function lettersOf(text: string): string {
  return text.toLowerCase().replace(/[^a-z]/g, '');
}
