/** No heading that names anything is longer, letters. */
const LONGEST_HEADING = 200;

/** Separates `Tip width (mm)`, `tip_width_mm`, `tipWidthMm` and `Tip width, mm` into word and unit. */
export function splitUnit(heading: string): { word: string; unit: string | null } {
  const text = heading
    .trim()
    .slice(0, LONGEST_HEADING)
    .replace(/([a-z])([A-Z])/g, '$1 $2');
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
