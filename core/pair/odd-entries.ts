import type { SheetPair } from './sheet.ts';

/** An entry that can be read but deserves a second look. */
export interface OddEntry {
  readonly row: number;
  readonly kind: 'duplicate' | 'same measurements' | 'radius' | 'units' | 'owner missing';
  readonly message: string;
  /** The other row concerned, where there is one. */
  readonly otherRow: number | null;
}

/**
 * Radii by which a pair is at home in its discipline, m, from the three widths over the contact length. Wide
 * on purpose, from children's skis to the top level [common practice].
 */
const usualRadii: Readonly<Record<string, readonly [number, number]>> = {
  SL: [8, 16],
  GS: [13, 36],
  SG: [22, 55],
  DH: [30, 70],
};

/** Looks a sheet over for entries given twice and measurements that do not go together. */
export function oddEntries(pairs: readonly SheetPair[]): OddEntry[] {
  const odd: OddEntry[] = [];
  const byName = new Map<string, SheetPair>();
  const byMeasure = new Map<string, SheetPair>();
  const someOwned = pairs.some(entry => entry.owner !== '');
  for (const entry of pairs) {
    const { pair, row, owner } = entry;
    const measure = [
      pair.lengthMm,
      pair.contactLengthMm,
      pair.tipWidthMm,
      pair.waistWidthMm,
      pair.tailWidthMm,
    ].join(' ');
    const name = `${owner.toLowerCase()}|${pair.name.toLowerCase()}`;
    const sameName = byName.get(name);
    const sameMeasure = byMeasure.get(`${name}|${measure}`) ?? byMeasure.get(measure);
    if (sameName && sameMeasure && sameMeasure.pair.name.toLowerCase() === pair.name.toLowerCase()) {
      odd.push({
        row,
        kind: 'duplicate',
        message: `${pair.name}: the same name, owner and measurements as row ${sameName.row}`,
        otherRow: sameName.row,
      });
    } else if (sameName) {
      odd.push({
        row,
        kind: 'duplicate',
        message: `${pair.name}: the same name and owner as row ${sameName.row}, with other measurements`,
        otherRow: sameName.row,
      });
    } else if (sameMeasure && sameMeasure.owner === owner) {
      odd.push({
        row,
        kind: 'same measurements',
        message: `${pair.name}: exactly the measurements of ${sameMeasure.pair.name} in row ${sameMeasure.row}`,
        otherRow: sameMeasure.row,
      });
    }
    if (!sameName) byName.set(name, entry);
    byMeasure.set(`${name}|${measure}`, entry);
    if (!byMeasure.has(measure)) byMeasure.set(measure, entry);
    odd.push(...oddMeasurements(entry));
    if (someOwned && owner === '') {
      odd.push({ row, kind: 'owner missing', message: `${pair.name}: no owner given`, otherRow: null });
    }
  }
  return odd;
}

function oddMeasurements({ pair, row }: SheetPair): OddEntry[] {
  const odd: OddEntry[] = [];
  const say = (kind: OddEntry['kind'], message: string): void => {
    odd.push({ row, kind, message: `${pair.name}: ${message}`, otherRow: null });
  };
  const spread = pair.tipWidthMm + pair.tailWidthMm - 2 * pair.waistWidthMm;
  const radius = pair.contactLengthMm ** 2 / (2000 * spread);
  const usual = pair.discipline === undefined ? undefined : usualRadii[pair.discipline];
  if (usual && (radius < usual[0] || radius > usual[1])) {
    say(
      'radius',
      `a radius of ${radius.toFixed(1)} m is unusual for ${pair.discipline}, where ${usual[0]} to ${usual[1]} m is; ` +
        'look at the widths and the contact length',
    );
  }
  const share = pair.contactLengthMm / pair.lengthMm;
  if (share < 0.7 || share > 0.97) {
    say(
      'units',
      `contactLengthMm ${pair.contactLengthMm} is ${(share * 100).toFixed(0)} % of lengthMm ${pair.lengthMm}; ` +
        'usual is 80 to 93 %, so a unit or a digit may be wrong',
    );
  }
  if (pair.massKg !== undefined && (pair.massKg < 0.8 || pair.massKg > 5)) {
    say('units', `massKg ${pair.massKg} is unusual for one ski; it may be for the pair, or in another unit`);
  }
  return odd;
}
