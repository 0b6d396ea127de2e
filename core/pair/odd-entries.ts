import type { Sentence } from '../language/index.ts';
import type { SheetPair } from './sheet.ts';

/** An entry that can be read but deserves a second look. */
export interface OddEntry {
  readonly row: number;
  readonly kind: 'duplicate' | 'same measurements' | 'radius' | 'units' | 'owner missing';
  /** Name of the pair. */
  readonly name: string;
  readonly remark: Sentence;
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
        name: pair.name,
        kind: 'duplicate',
        remark: { key: 'pair.sameEntry', values: { line: sameName.row } },
        otherRow: sameName.row,
      });
    } else if (sameName) {
      odd.push({
        row,
        name: pair.name,
        kind: 'duplicate',
        remark: { key: 'pair.sameName', values: { line: sameName.row } },
        otherRow: sameName.row,
      });
    } else if (sameMeasure && sameMeasure.owner === owner) {
      odd.push({
        row,
        name: pair.name,
        kind: 'same measurements',
        remark: {
          key: 'pair.sameMeasurements',
          values: { other: sameMeasure.pair.name, line: sameMeasure.row },
        },
        otherRow: sameMeasure.row,
      });
    }
    if (!sameName) byName.set(name, entry);
    byMeasure.set(`${name}|${measure}`, entry);
    if (!byMeasure.has(measure)) byMeasure.set(measure, entry);
    odd.push(...oddMeasurements(entry));
    if (someOwned && owner === '') {
      odd.push({
        row,
        name: pair.name,
        kind: 'owner missing',
        remark: { key: 'pair.noOwner' },
        otherRow: null,
      });
    }
  }
  return odd;
}

function oddMeasurements({ pair, row }: SheetPair): OddEntry[] {
  const odd: OddEntry[] = [];
  const note = (kind: OddEntry['kind'], remark: Sentence): void => {
    odd.push({ row, name: pair.name, kind, remark, otherRow: null });
  };
  const spread = pair.tipWidthMm + pair.tailWidthMm - 2 * pair.waistWidthMm;
  const radius = pair.contactLengthMm ** 2 / (2000 * spread);
  const usual = pair.discipline === undefined ? undefined : usualRadii[pair.discipline];
  if (usual && (radius < usual[0] || radius > usual[1])) {
    note('radius', {
      key: 'pair.oddRadius',
      values: {
        radius: { quantity: 'radius', value: radius },
        discipline: pair.discipline!,
        from: { quantity: 'radius', value: usual[0], decimals: 0, bare: true },
        to: { quantity: 'radius', value: usual[1], decimals: 0 },
      },
    });
  }
  const share = pair.contactLengthMm / pair.lengthMm;
  if (share < 0.7 || share > 0.97) {
    note('units', {
      key: 'pair.oddContactLength',
      values: {
        contact: { field: 'contactLengthMm' },
        found: pair.contactLengthMm,
        share: { quantity: 'share', value: share },
        length: { field: 'lengthMm' },
        of: pair.lengthMm,
      },
    });
  }
  if (pair.massKg !== undefined && (pair.massKg < 0.8 || pair.massKg > 5)) {
    note('units', {
      key: 'pair.oddMass',
      values: { mass: { field: 'massKg' }, found: pair.massKg },
    });
  }
  return odd;
}
